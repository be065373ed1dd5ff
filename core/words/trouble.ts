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
  'lost.more': '{first} And {count} more: see the office, under PIN and backups.',
  'lost.cannot-write': 'Nothing can be recorded now. Set-ups, board and papers can be looked at: {reason}.',
  'lost.log-gone': 'The log of what was done is gone. It had {seq} entries.',
  'lost.log-shorter': 'The log of what was done was cut short: {bytes} of {was} bytes are left.',
  'lost.log-damaged': '{count} lines of the log are damaged; what they recorded may be lost.',
  'lost.log-damaged.one': 'A line of the log is damaged; what it recorded may be lost.',
  'lost.jobs-gone': '{count} jobs are gone from the data folder.',
  'lost.jobs-gone.one': 'A job is gone from the data folder.',
  'lost.job-unreadable': 'A job could not be read ({reason}). It is kept as {kept}.',
  'lost.plan-damaged':
    'The kept plan of the job “{job}” was damaged or gone. It was worked out anew from the job itself.',
  'lost.plan-lost':
    'The kept plan of the job “{job}” is damaged, and this version cannot make it anew: correct the job’s faults in the office.',
  'lost.shop-gone': 'The shop’s people and tools are gone. The built-in ones are used.',
  'lost.shop-unreadable':
    'The shop’s people and tools could not be read ({reason}). The built-in ones are used; the file is kept as {kept}.',
  'lost.pin-unreadable':
    'The file of the PIN cannot be read, so the office stays closed. To open it, stop the program, remove pin.json from the data folder, and start it again.',
  'lost.pin-gone':
    'The shop’s PIN was removed: the office is open to everybody. Set a new one in the office.',
  'lost.record-gone':
    'The folder’s own record was removed. Whether anything else is missing cannot be told: look at the board.',
  'lost.record-unreadable':
    'The folder’s own record cannot be read ({reason}). Whether anything else is missing cannot be told: look at the board.',
  'lost.backup-gone': 'Backups cannot be copied to {folder}: {reason}. Is the stick in?',
  'lost.backup-late': 'No backup has come to lie off this machine for {count} days, in {folder}.',
  'lost.undo':
    'A backup brings back what it holds; what was recorded after it is lost. Or go on with what is there.',
  'lost.known': 'We know. Show it no more',
} as const;
