export { calibrationPdf } from './calibration-pdf.ts';
export { stickersPdf, type StickerOptions, type Stickers, type TooLarge } from './stickers-pdf.ts';
export { STOCKS } from './stock.ts';
