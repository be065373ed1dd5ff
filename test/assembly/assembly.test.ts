import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { assemble, noDoors } from './assemble.ts';
import { inMillimetres } from './in-millimetres.ts';
import { randomDoor, ways } from './random-door.ts';

test.each(['in', 'mm'] as const)(
  'random doors in %s, put together from their printed settings alone, close without gap or overlap',
  (units) => {
    const tally = noDoors();
    fc.assert(
      fc.property(randomDoor, ways, (fields, ways) => {
        const door = units === 'in' ? fields : { ...(inMillimetres(fields) as typeof fields), mark: 'A' };
        const planned = planFile({ format: 1, job: 'x', units, ways, doors: [door] });
        if (planned.ok)
          for (const each of planned.value.doors) assemble(each, tally, door.tenon.haunchClearance);
      }),
      { numRuns: 150 },
    );
    expect(tally.made).toBeGreaterThan(40);
    expect(
      Math.min(tally.arched, tally.semicircles, tally.plain, tally.shallow, tally.midRails),
    ).toBeGreaterThan(0);
    expect(Math.min(tally.haunchHome, tally.haunchShort, tally.haunchGone)).toBeGreaterThan(0);
  },
  60_000,
);

test('a door whose printed settings were tampered with does not close', () => {
  const planned = planFile({
    format: 1,
    job: 'x',
    units: 'in',
    doors: [{ mark: 'A', opening: { width: '16', height: '30' }, midRails: [{ width: '3', centre: '14' }] }],
  });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  const text = JSON.stringify(planned.value.doors[0]);
  const built = (json: string) => () => {
    assemble(JSON.parse(json) as Parameters<typeof assemble>[0], noDoors(), '1/32');
  };
  // Groove 3/8 − bead 3/16 − 1/32 leaves a haunch of 5/32: outer stop 1 1/4 − 5/32; a mortise starts at 1/2 + 3/8 − 1/32.
  expect(built(text)).not.toThrow();
  const tampered = [
    text.replace('"sightEdge":"3 1/4"', '"sightEdge":"3 9/32"'),
    text.replace('"outerStop":"1 3/32"', '"outerStop":"1 1/8"'),
    // A haunch to the groove's floor, in every setting that says so.
    text
      .replaceAll('"outerStop":"1 3/32"', '"outerStop":"1 1/16"')
      .replaceAll('"length":"5/32"', '"length":"3/16"'),
    text.replace('"start":"27/32"', '"start":"31/32"'),
    text.replace('"height":"1/4"', '"height":"9/32"'),
    text.replaceAll('"from":"13 3/16"', '"from":"13 7/32"'),
  ];
  for (const each of tampered) {
    expect(each).not.toBe(text);
    expect(built(each)).toThrow();
  }
});
