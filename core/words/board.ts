/** What the board says. */
export const boardWords = {
  'board.title': 'Where every door stands',
  'board.all-jobs': 'All jobs',
  'board.door': 'Door',
  'board.job': 'Job',
  'board.reached': 'Has reached',
  'board.progress': 'Stages done',
  'board.behind': 'Parts at that stage',
  'board.due': 'Due',
  'board.none': 'No job yet. Make one in the office.',
  'board.finished': 'Finished',
  'board.at': 'at {station}',
  'board.count': '{done} of {of}',
} as const;
