import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planFile } from '#core/plan/plan-file.ts';
import { assemble, noDoors } from './assemble.ts';
import { inMillimetres } from './in-millimetres.ts';
import { randomDoor } from './random-door.ts';

test.each(['in', 'mm'] as const)(
  'random doors in %s, put together from their printed settings alone, close without gap or overlap',
  (units) => {
    const tally = noDoors();
    fc.assert(
      fc.property(randomDoor, (fields) => {
        const door = units === 'in' ? fields : { ...(inMillimetres(fields) as object), mark: 'A' };
        const planned = planFile({ format: 1, job: 'x', units, doors: [door] });
        if (planned.ok) for (const each of planned.value.doors) assemble(each, tally);
      }),
      { numRuns: 150 },
    );
    expect(tally.made).toBeGreaterThan(40);
    expect(
      Math.min(tally.arched, tally.semicircles, tally.plain, tally.shallow, tally.midRails),
    ).toBeGreaterThan(1);
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
    assemble(JSON.parse(json) as Parameters<typeof assemble>[0], noDoors());
  };
  expect(built(text)).not.toThrow();
  const tampered = [
    text.replace('"sightEdge":"3 1/4"', '"sightEdge":"3 9/32"'),
    text.replace('"outerStop":"15/16"', '"outerStop":"1"'),
    text.replace('"start":"23/32"', '"start":"27/32"'),
    text.replace('"height":"1/4"', '"height":"9/32"'),
    text.replaceAll('"from":"13 3/16"', '"from":"13 7/32"'),
  ];
  for (const each of tampered) {
    expect(each).not.toBe(text);
    expect(built(each)).toThrow();
  }
});
