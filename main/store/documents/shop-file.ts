import { putAside } from '../files/aside.ts';
import { findDocument } from '../files/document.ts';
import type { FilePort } from '../files/file-port.ts';
import type { ShopDocuments } from '../journal.ts';
import { readShopDocument, SHOP_FORMAT } from './shop-document.ts';

/** The shop's document in a file of its own. */
export function shopFile(port: FilePort, path: string): ShopDocuments {
  return {
    open: (fresh) => findDocument(port, path, readShopDocument, SHOP_FORMAT, fresh),
    putAside: (error) => putAside(port, path, error),
  };
}
