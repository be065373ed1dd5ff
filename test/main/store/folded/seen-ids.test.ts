import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import { SeenIds } from '#main/store/folded/seen-ids.ts';

test('every id is found under its number and no other, over several tables and after a snapshot', () => {
  const ids = new SeenIds();
  const known = Array.from({ length: 50_000 }, () => randomUUID());
  known.forEach((id, k) => ids.add(id, k + 1));
  const again = new SeenIds(ids.kept());
  for (const table of [ids, again]) {
    expect(table.count).toBe(50_000);
    expect(known.every((id, k) => table.find(id) === k + 1)).toBe(true);
    expect(
      Array.from({ length: 10_000 }, () => table.find(randomUUID())).filter((seq) => seq !== undefined),
    ).toEqual([]);
  }
});

test('letters of an id may be large or small', () => {
  const ids = new SeenIds();
  ids.add('ABCDEF00-0000-4000-8000-00000000000F', 7);
  expect(ids.find('abcdef00-0000-4000-8000-00000000000f')).toBe(7);
});

test('a copy for a snapshot does not change when more is added', () => {
  const ids = new SeenIds();
  ids.add(randomUUID(), 1);
  const kept = ids.kept();
  const later = randomUUID();
  ids.add(later, 2);
  expect(new SeenIds(kept).find(later)).toBeUndefined();
});
