import { expect, test } from 'vitest';
import { Burst, type Heard } from '#ui/scan/burst.ts';

function type(burst: Burst, text: string, gap: number, start = 0): Heard {
  let heard: Heard = { kind: 'other' };
  for (const [k, key] of [...text, 'Enter'].entries()) heard = burst.hear({ key, at: start + k * gap });
  return heard;
}

test('a fast run of keys ended by Enter is a scan', () => {
  expect(type(new Burst(), '803AX3UERH', 8)).toEqual({ kind: 'scan', text: '803AX3UERH' });
});

test('a person typing is no scanner', () => {
  expect(type(new Burst(), '803AX3UERH', 150)).toEqual({ kind: 'other' });
});

test('a person’s keys before a burst are not part of it', () => {
  const burst = new Burst();
  burst.hear({ key: 'q', at: 0 });
  expect(type(burst, '803AX3UERH', 8, 1000)).toEqual({ kind: 'scan', text: '803AX3UERH' });
});

test('Shift and Caps Lock between the keys do no harm', () => {
  const burst = new Burst();
  const keys = ['Shift', 'A', 'Shift', 'B', 'C', 'D'];
  for (const [k, key] of keys.entries()) burst.hear({ key, at: k * 8 });
  expect(burst.hear({ key: 'Enter', at: keys.length * 8 })).toEqual({ kind: 'scan', text: 'ABCD' });
});

test('a prefix and a suffix that the scanner sends are taken off', () => {
  expect(type(new Burst('~', '#'), '~803AX3UERH#', 8)).toEqual({ kind: 'scan', text: '803AX3UERH' });
});
