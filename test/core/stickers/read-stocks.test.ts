import { expect, test } from 'vitest';
import { readProfile, writeProfile } from '#core/shop/read-profile.ts';
import { allStocks } from '#core/stickers/read-stocks.ts';
import type { Units } from '#core/length/units.ts';

const sheet = {
  kind: 'sheet',
  page: { width: '8 1/2', height: '11' },
  label: { width: '4', height: '1 1/3' },
  columns: 2,
  rows: 7,
  left: '5/32',
  top: '5/6',
  pitchX: '4 3/16',
  pitchY: '1 1/3',
  corner: '1/8',
};

function faults(stocks: unknown, units: Units = 'in'): string[] {
  const read = readProfile({ stocks }, units);
  return read.ok ? [] : read.faults.map(({ path, code }) => `${path} ${code}`);
}

test('a shop’s own sheet and roll are read in their own units, and written back the same', () => {
  const roll = { kind: 'roll', units: 'mm', label: { width: '57', height: '32' }, gap: '3', dpi: 300 };
  const read = readProfile({ stocks: { 'two-by-seven': sheet, 'small-roll': roll } }, 'in');
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const stocks = allStocks(read.value.stocks);
  expect(Object.keys(stocks)).toEqual([
    'letter-3x10',
    'a4-3x8',
    'roll-2x1',
    'roll-3x1',
    'roll-4x2',
    'two-by-seven',
    'small-roll',
  ]);
  expect(stocks['two-by-seven']).toMatchObject({ kind: 'sheet', units: 'in', columns: 2, dpi: 600 });
  expect(stocks['small-roll']).toMatchObject({ kind: 'roll', units: 'mm', dpi: 300 });
  const again = readProfile(writeProfile(read.value), 'in');
  expect(again.ok && writeProfile(again.value)).toEqual(writeProfile(read.value));
});

test('stickers that overlap, leave the page or are rounder than they are wide are refused by field', () => {
  expect(faults({ a: { ...sheet, pitchX: '3 31/32' } })).toEqual(['stocks.a.pitchX stock-overlap']);
  expect(faults({ a: { ...sheet, rows: 8 } })).toEqual(['stocks.a.top stock-off-page']);
  // 5/32 + 4 3/16 + 4 = 8 11/32; with 7/16 at the left 8 5/8.
  expect(faults({ a: { ...sheet, left: '7/16' } })).toEqual(['stocks.a.left stock-off-page']);
  expect(faults({ a: { ...sheet, corner: '3/4' } })).toEqual(['stocks.a.corner stock-corner']);
});

test('what is missing, unknown, no number or no stock is named', () => {
  expect(faults({ a: { kind: 'roll' } })).toEqual(['stocks.a.label required']);
  expect(faults({ a: { ...sheet, maker: 'x' } })).toEqual(['stocks.a.maker unknown-field']);
  expect(faults({ a: { ...sheet, columns: 2.5 } })).toEqual(['stocks.a.columns count']);
  expect(faults({ a: { ...sheet, dpi: 72 } })).toEqual(['stocks.a.dpi count']);
  expect(faults({ a: { ...sheet, kind: 'tile' } })).toEqual(['stocks.a.kind word']);
  expect(faults({ 'Our Sheet': sheet })).toEqual(['stocks.Our Sheet stock-name']);
  expect(faults([sheet])).toEqual(['stocks type']);
  expect(faults({ a: { ...sheet, label: { width: '0', height: '1' } } })).toEqual([
    'stocks.a.label.width zero',
  ]);
});

test('a built-in stock takes what its printer does to it, and nothing else', () => {
  const adjust = { right: '1/32', down: '-1/16', across: { printed: '5 63/64', of: '6' } };
  const read = readProfile({ stocks: { 'letter-3x10': { adjust } } }, 'in');
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const { adjust: found } = allStocks(read.value.stocks)['letter-3x10'] ?? {};
  expect([found?.right, found?.down, found?.across, found?.along].map((each) => each?.toFraction())).toEqual([
    '1/32',
    '-1/16',
    '383/384',
    '1',
  ]);
  expect(faults({ 'letter-3x10': { rows: 11 } })).toEqual(['stocks.letter-3x10.rows unknown-field']);
  expect(faults({ 'letter-3x10': { adjust: { across: { printed: '5', of: '6' } } } })).toEqual([
    'stocks.letter-3x10.adjust.across stock-adjust',
  ]);
});
