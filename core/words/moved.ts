/** The shop computer at another address: what the kept page of a paired device says, and what the office shows for it. */
export const movedWords = {
  'api.moved-here': 'This is done by a page from another address of the shop computer alone.',
  'api.moved-over':
    'This device was on its way for too long, or has arrived already. Open the station again at its old address, or pair the device here.',
};
