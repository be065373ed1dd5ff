/** The shop computer at another address: what the kept page of a paired device says, and what the office shows for it. */
export const movedWords = {
  'moved.ask':
    'The shop computer still does not answer. If it has another address now, enter it here. The office shows it under Network.',
  'moved.type': 'Enter the address',
  'moved.scan': 'Scan the address',
  'moved.pad': 'Address of the shop computer',
  'moved.camera': 'Hold the picture that the office shows under Network in front of the camera.',
  'moved.form': 'That is not an address in the shop’s network. The office shows it under Network.',
  'moved.looking': 'Looking for the shop computer at {address} …',
  'moved.nothing':
    'At {address} nothing answers that this device can trust. Check the address. What was recorded here is kept.',
  'moved.stranger': '{address} is not the computer of this shop. Nothing was sent there.',
  'moved.revoked': 'At {address} this device was revoked. What was recorded here is kept, but was not sent.',
  'moved.found': 'The shop computer is at {address} now. What was recorded here is sent there.',
  'moved.left': '{count} records are still kept here.',
  'moved.left.one': 'One record is still kept here.',
  'moved.go': 'Go there now',
  'moved.leaving': 'Going to the new address of the shop computer',
  'moved.arriving': 'This device is coming to the new address of the shop computer',
  'api.moved-here': 'This is done by a page from another address of the shop computer alone.',
  'api.moved-over':
    'This device was on its way for too long, or has arrived already. Open the station again at its old address, or pair the device here.',
};
