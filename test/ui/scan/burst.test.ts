// @vitest-environment node

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Burst, type Heard } from '#ui/scan/burst.ts';
import { isWholeCode } from '#ui/scan/listen.ts';

function type(burst: Burst, text: string, gap: number, start = 0): Heard {
  let heard: Heard = { kind: 'other' };
  for (const [k, key] of [...text, 'Enter'].entries()) heard = burst.hear({ key, at: start + k * gap });
  return heard;
}

test('a fast run of keys ended by Enter is a scan', () => {
  expect(type(new Burst(), '803AX3UERH', 8)).toEqual({ kind: 'scan', text: '803AX3UERH' });
});

test('a person’s keys are told as typing as soon as two pauses show it', () => {
  const burst = new Burst();
  const heard = [...'803A'].map((key, k) => burst.hear({ key, at: k * 180 }).kind);
  expect(heard).toEqual(['building', 'building', 'typed', 'typed']);
});

test('a scan that a busy machine holds up between two keys, or before its Enter, is still whole', () => {
  for (const late of [1, 4, 9, 10]) {
    const burst = new Burst(isWholeCode);
    let heard: Heard = { kind: 'other' };
    for (const [k, key] of [...'803AX3UERH', 'Enter'].entries())
      heard = burst.hear({ key, at: k * 80 + (k >= late ? 600 : 0) });
    expect(heard, `held up at key ${late}`).toEqual({ kind: 'scan', text: '803AX3UERH' });
  }
});

test('eighty milliseconds between keys, each up to twice as late, lose no scan', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 80, max: 240 }), { minLength: 11, maxLength: 11 }), (gaps) => {
      const burst = new Burst(isWholeCode);
      let at = 0;
      let heard: Heard = { kind: 'other' };
      for (const [k, key] of [...'803AX3UERH', 'Enter'].entries())
        heard = burst.hear({ key, at: (at += gaps[k] ?? 0) });
      expect(heard).toEqual({ kind: 'scan', text: '803AX3UERH' });
    }),
  );
});

test('a key of a person’s shortly before a scan is left out of it', () => {
  const burst = new Burst(isWholeCode);
  burst.hear({ key: 'q', at: 0 });
  expect(type(burst, '803AX3UERH', 8, 400)).toEqual({ kind: 'scan', text: '803AX3UERH' });
});

test('a person’s keys before a burst are not part of it', () => {
  const burst = new Burst();
  burst.hear({ key: 'q', at: 0 });
  expect(type(burst, '803AX3UERH', 8, 2000)).toEqual({ kind: 'scan', text: '803AX3UERH' });
});

test('Shift and Caps Lock between the keys do no harm', () => {
  const burst = new Burst();
  const keys = ['Shift', 'A', 'Shift', 'B', 'C', 'D'];
  for (const [k, key] of keys.entries()) burst.hear({ key, at: k * 8 });
  expect(burst.hear({ key: 'Enter', at: keys.length * 8 })).toEqual({ kind: 'scan', text: 'ABCD' });
});

test('a prefix and a suffix that the scanner sends are taken off', () => {
  const burst = new Burst(isWholeCode, () => ({ prefix: '~', suffix: '#' }));
  expect(type(burst, '~803AX3UERH#', 8)).toEqual({ kind: 'scan', text: '803AX3UERH' });
});
