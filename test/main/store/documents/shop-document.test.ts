import { expect, test } from 'vitest';
import { shopAtFirst } from '#core/shop/shop-start.ts';
import { readShopDocument } from '#main/store/documents/shop-document.ts';

const kept = (shop: object) =>
  JSON.stringify({ format: 2, revision: 3, shop: { ...shopAtFirst(), ...shop } });

test('a shop’s language is kept, and one that this version does not know loses no more than itself', () => {
  expect(readShopDocument(kept({ language: 'de' })).shop.language).toBe('de');
  const { shop, revision } = readShopDocument(kept({ language: 'xx', name: 'Ferrow joinery' }));
  expect([shop.language, shop.name, revision]).toEqual([undefined, 'Ferrow joinery', 3]);
});

test('a shop that has chosen no language is kept without one', () => {
  expect(JSON.stringify(readShopDocument(kept({})))).not.toContain('language');
});
