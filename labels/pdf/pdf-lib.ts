import type * as whole from 'pdf-lib';
import least from 'pdf-lib/dist/pdf-lib.min.js';

/** What of pdf-lib is used here, from its build in one small file: less memory than its many. */
export const { PDFDocument, PDFName, PDFRawStream } = least;
export type PDFDocument = whole.PDFDocument;
export type PDFFont = whole.PDFFont;
export type PDFPage = whole.PDFPage;
