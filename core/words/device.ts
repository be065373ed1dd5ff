/** What a device that is paired with the shop is asked once: how large its screen is, told by a bank card held to it. */
export const deviceWords = {
  'card.title': 'Fit the numbers to this screen',
  'card.across': 'Lay a bank card on the drawing. Make the drawing exactly as wide as the card.',
  'card.upright':
    'Lay a bank card upright on the drawing. Make the drawing exactly as wide as the card. Is the card wider than the screen? Turn the device on its side.',
  'card.narrower': 'Narrower',
  'card.wider': 'Wider',
  'card.width': 'Width of the drawing',
  'card.fits': 'It fits',
  'card.later': 'Not now',
} as const;
