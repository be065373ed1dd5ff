import { expect, test } from 'vitest';
import { documentText } from '#main/store/files/document.ts';
import { sealed, unsealed } from '#main/store/files/seal.ts';

const DOCUMENT = { format: 4, id: 'boot-room', file: { width: '16', note: 'a "sum" of 7' }, asMarked: [] };

test('a sealed document reads as JSON, and comes back as it was', () => {
  const text = documentText(DOCUMENT);
  expect(JSON.parse(sealed(text))).toMatchObject(DOCUMENT);
  expect(unsealed(sealed(text))).toBe(text);
  expect(unsealed(text)).toBe(text);
});

test('whatever bit of a sealed document is changed, it is not read', () => {
  const whole = Buffer.from(sealed(documentText(DOCUMENT)));
  let read = 0;
  for (let at = 0; at < whole.length; at += 1)
    for (let bit = 0; bit < 8; bit += 1) {
      const damaged = Buffer.from(whole);
      damaged[at] = (damaged[at] ?? 0) ^ (1 << bit);
      try {
        JSON.parse(unsealed(damaged.toString('utf8')));
        read += 1;
        console.error(`bit ${bit} of byte ${at} of ${whole.length}`);
      } catch {
        // As it is to be.
      }
    }
  expect(read).toBe(0);
});

test('cut anywhere it is not read', () => {
  const whole = sealed(documentText(DOCUMENT));
  for (let at = 0; at < whole.length - 1; at += 1)
    expect(() => JSON.parse(unsealed(whole.slice(0, at))) as unknown, `${at}`).toThrow();
});
