import { expect, test } from 'vitest';
import { readProfile, writeProfile } from '#core/shop/read-profile.ts';

test('a shop profile from before ± was asked for has the built-in ones, and what it says of them is kept', () => {
  const old = readProfile({ format: 1, units: 'in', slidingFit: '1/32' }, 'in');
  if (!old.ok) throw new Error(JSON.stringify(old.faults));
  expect(writeProfile(old.value).tolerances).toEqual({
    fence: '1/128',
    stop: '1/64',
    height: '1/128',
    milling: '1/64',
  });
  const mm = readProfile({ tolerances: { stop: '0.5' } }, 'mm');
  if (!mm.ok) throw new Error(JSON.stringify(mm.faults));
  const written = writeProfile(mm.value);
  expect(written.tolerances).toEqual({ fence: '1/5', stop: '1/2', height: '1/5', milling: '2/5' });
  const again = readProfile(written, 'mm');
  expect(again.ok && writeProfile(again.value)).toEqual(written);
});

test('a ± that is no length, or under nothing, is refused by where it stands', () => {
  for (const [said, code] of [
    ['-1/64', 'negative'],
    ['close', 'length-form'],
  ] as const) {
    const read = readProfile({ tolerances: { fence: said } }, 'in');
    expect(read.ok ? null : read.faults[0]).toMatchObject({ path: 'tolerances.fence', code });
  }
  const other = readProfile({ tolerances: { luck: '1' } }, 'in');
  expect(other.ok ? null : other.faults[0]).toMatchObject({ path: 'tolerances.luck', code: 'unknown-field' });
});
