/** What is said where a screen, or a part of one, could not be drawn. */
export const troubleWords = {
  'trouble.title': 'This screen could not be drawn',
  'trouble.screen':
    'The fault is in the program, not in what you did. Every mark and every job that was saved is still there. Try again; if it stays, load it anew, and tell the office what you did last.',
  'trouble.again': 'Try again',
  'trouble.load': 'Load anew',
  'trouble.elsewhere': 'The other screens still work',
  'trouble.to-station': 'Stations',
  'trouble.to-board': 'Board',
  'trouble.to-office': 'Office',
  'trouble.pane':
    'This part could not be drawn: a fault in the program. All that is typed beside it is still there and can be saved.',
} as const;
