export { stickersPdf, type StickerOptions, type Stickers } from './stickers-pdf.ts';
export { STOCKS, type StockName } from './stock.ts';
