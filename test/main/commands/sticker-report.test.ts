import { expect, test } from 'vitest';
import { stickerReport } from '#main/commands/sticker-report.ts';

const made = {
  ok: true,
  pdf: new Uint8Array(),
  parts: 5,
  stickers: 6,
  pages: 1,
  doubled: ['803AX3UERH'],
  tooLarge: [],
} as const;

test('the command says how many stickers it made and which parts have two', () => {
  expect(stickerReport(made, 'roll-2x1', 'out.pdf')).toEqual([
    '6 stickers for 5 parts on 1 page of roll-2x1: out.pdf',
    'A part needs two stickers or more, marked “sticker 1 of 2”, “sticker 2 of 2”: 803AX3UERH',
  ]);
});

test('parts for which a stock is too large are named together with the stocks that fit', () => {
  const part = (code: string, fits: readonly string[], state: 'bears' | 'none') =>
    ({ code, door: 'KEYS-1', part: 'stile-left', state, fits }) as const;
  const report = stickerReport(
    {
      ...made,
      doubled: [],
      tooLarge: [
        part('A', ['roll-2x1'], 'none'),
        part('B', ['roll-2x1'], 'none'),
        part('C', [], 'none'),
        part('D', ['roll-2x1', 'roll-3x1'], 'bears'),
      ],
    },
    'roll-4x2',
    'out.pdf',
  );
  expect(report.slice(1)).toEqual([
    'roll-4x2 is too large for the back of 2 parts; take roll-2x1: KEYS-1 Left stile A, KEYS-1 Left stile B',
    'roll-4x2 is too large for the back of a part; take none of the stocks: KEYS-1 Left stile C',
    'roll-4x2 is too large for a part: the sticker sits where the back goes against a fence or table, so peel it off before that, or take roll-2x1, roll-3x1: KEYS-1 Left stile D',
  ]);
});
