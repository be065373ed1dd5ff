export { calibrationPdf } from './stickers/calibration-pdf.ts';
export { stickersPdf, type StickerOptions, type Stickers, type TooLarge } from './stickers/stickers-pdf.ts';
