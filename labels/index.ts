export { stickersPdf, type StickerOptions, type Stickers } from './stickers-pdf.ts';
export { STOCKS } from './stock.ts';
