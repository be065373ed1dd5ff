// @vitest-environment node

import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
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

test('an arched door is arched: its top rail is hollow by as much as the panel below it is round', () => {
  const planned = planFile({
    format: 1,
    job: 'Arched',
    units: 'in',
    doors: [
      { mark: 'ARCH', opening: { width: '16', height: '30' }, arch: { rise: '2', flat: '1' } },
      { mark: 'PLAIN', opening: { width: '16', height: '30' } },
    ],
  });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  const [arched, plain] = planned.value.doors.map((door) => doorMap(door));
  const outline = (name: string) => arched?.parts.find(({ part }) => part === name)?.outline ?? '';
  const arcs = ['rail-top', 'panel'].map((name) =>
    /([\d.]+) ([\d.]+)A([\d.]+) [\d.]+ 0 0 ([01]) ([\d.]+) ([\d.]+)/.exec(outline(name)),
  );
  const [rail, panel] = arcs.map((arc) => {
    const [x1, y1, radius, sweep, x2, y2] = (arc ?? []).slice(1).map(Number);
    return { from: [x1, y1], to: [x2, y2], radius: radius ?? NaN, sweep };
  });
  if (rail === undefined || panel === undefined) throw new Error('no arcs');
  // The same circle between the same two points, once there and once back: rail rightwards, panel leftwards.
  expect(rail).toEqual({ from: panel.to, to: panel.from, radius: panel.radius, sweep: 1 });
  expect(panel.sweep).toBe(0);
  const half = ((panel.from[0] ?? NaN) - (panel.to[0] ?? NaN)) / 2;
  // By Pythagoras, from chord and rise.
  expect(panel.radius).toBeCloseTo((half * half + 4) / 4, 3);
  for (const name of ['stile-left', 'stile-right', 'rail-bottom']) expect(outline(name)).not.toContain('A');
  for (const { outline: each } of plain?.parts ?? []) expect(each).not.toContain('A');
});
