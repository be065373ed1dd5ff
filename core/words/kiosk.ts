/** What is shown in place of the screens where the program on the shop computer, or the window, keeps failing. */
export const kioskWords = {
  'kiosk.stopped.hub': 'The program on the shop computer has stopped',
  'kiosk.stopped.screen': 'This screen keeps failing',
  'kiosk.stopped.times':
    'It stopped {times} times within a minute, and was started again each time but the last.',
  'kiosk.stopped.kept': 'What was recorded is on its disk.',
  'kiosk.stopped.line': 'How it ended: {how}. The last line of its log:',
  'kiosk.stopped.no-line': 'The log is empty or cannot be read.',
  'kiosk.stopped.do':
    'Tap “Try again”. If it stops again, restart the shop computer. If that does not help, show this page to whoever looks after it. The whole log is {log}.',
  'kiosk.again': 'Try again',
  'kiosk.starting': 'Starting…',
} as const;
