// @vitest-environment node

import { expect, test } from 'vitest';
import { planFile } from '#core/plan/plan-file.ts';
import { doorMap } from '#ui/assembly/door-map.ts';

test('every part of a door has its place, panels and mid rails from the bottom up, and nothing stands outside', () => {
  const planned = planFile({
    format: 1,
    job: 'Net store',
    units: 'in',
    doors: [
      {
        mark: 'A',
        opening: { width: '14', height: '60' },
        midRails: [
          { width: '3', centre: '22' },
          { width: '3', centre: '40' },
        ],
      },
    ],
  });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  const door = planned.value.doors[0];
  if (door === undefined) throw new Error('no door');
  const map = doorMap(door);
  expect(map.parts.map(({ part }) => part).sort()).toEqual(door.parts.map(({ part }) => part).sort());
  const top = (name: string) => map.parts.find(({ part }) => part === name)?.y ?? Number.NaN;
  const order = ['rail-top', 'panel-3', 'rail-mid-2', 'panel-2', 'rail-mid-1', 'panel-1', 'rail-bottom'];
  expect(order.map(top)).toEqual([...order.map(top)].sort((a, b) => a - b));
  for (const { x, y, width, height } of map.parts) {
    expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
    expect(x + width).toBeLessThanOrEqual(map.width + 1e-9);
    expect(y + height).toBeLessThanOrEqual(map.height + 1e-9);
  }
});
