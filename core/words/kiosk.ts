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
  'kiosk.station.away': 'The shop computer does not answer',
  'kiosk.station.away.do':
    'Is it switched on, and is this machine in the shop’s network? Nothing is to be done here: this page goes on by itself as soon as {address} answers.',
  'kiosk.station.first': 'Is this your shop computer?',
  'kiosk.station.first.do':
    'Something answers at {address}. Go to the shop computer, open Network in the office, and compare the fingerprint there with this one.',
  'kiosk.station.changed': 'The shop computer’s key has changed',
  'kiosk.station.changed.do':
    'What answers at {address} has another key than before. Somebody else may answer in its place. Nothing is shown or recorded here until you have compared again: go to the shop computer, open Network in the office, and compare the fingerprint there with this one.',
  'kiosk.station.trust': 'Every letter and digit is the same: trust it',
  'kiosk.station.differs': 'It differs',
  'kiosk.station.warned': 'Stop here',
  'kiosk.station.warned.do':
    'What answers at {address} is not your shop computer. It is not trusted, and nothing was sent to it. Show this page to whoever looks after the network.',
  'kiosk.station.again': 'Compare again',
  'kiosk.station.given': 'What answers has another fingerprint',
  'kiosk.station.given.do':
    'At {address} answers something else than what was named when the program was started here. It is not trusted, and nothing was sent to it. This is its fingerprint; compare it with the one in the office, under Network.',
  'kiosk.station.clock': 'The date does not fit the shop’s certificate',
  'kiosk.station.clock.do':
    'On this machine it is {date}, and the certificate of {address} is not valid on that day. Set date and time right, on both machines. This page then goes on by itself.',
  'kiosk.station.name': 'This is not the address of the shop computer',
  'kiosk.station.name.do':
    'The certificate of what answers at {address} is not made out for that address. Start the program here with the address that the office shows under Network.',
  'kiosk.station.stranger': 'What answers is not the shop computer',
  'kiosk.station.stranger.do':
    'Another program answers at {address}. Is the address right? The office shows it under Network. This page goes on by itself.',
  'kiosk.station.failing':
    'It stopped {times} times within a minute. What was recorded here stays here until it is sent. Tap “Try again”. If it stops again, restart this machine.',
} as const;
