import type { Words } from '../language.ts';

/** How large a device’s screen is, told by a bank card held to it. */
export const device: Words = {
  'card.title': 'Zahlen an diesen Bildschirm anpassen',
  'card.across':
    'Eine Bankkarte auf die Zeichnung legen. Die Zeichnung genau so breit machen, wie die Karte ist.',
  'card.upright':
    'Eine Bankkarte hochkant auf die Zeichnung legen. Die Zeichnung genau so breit machen, wie die Karte ist. Ist die Karte breiter als der Bildschirm? Dann das Gerät quer halten.',
  'card.narrower': 'Schmaler',
  'card.wider': 'Breiter',
  'card.width': 'Breite der Zeichnung',
  'card.fits': 'Passt',
  'card.later': 'Nicht jetzt',
};
