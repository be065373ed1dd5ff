import { expect, test } from 'vitest';
import type { Area, Drawing } from '#core/drawing/model.ts';
import { readJob } from '#core/job/read-job.ts';
import { readMeasured } from '#core/measured/read-measured.ts';
import { planJob } from '#core/planning/plan-job.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import { doorView } from '#core/views/door-view.ts';
import { trimView } from '#core/views/trim-view.ts';
import { planFile } from '#core/planning/plan-file.ts';

function view(oversize: string) {
  const plan = planFile({
    format: 1,
    job: 'Rope walk',
    units: 'in',
    doors: [
      {
        mark: 'A',
        opening: { width: '30', height: '40' },
        oversize: { width: oversize, height: oversize },
        reveal: '0',
        mortise: { endPlay: '0' },
        survey: {
          widthBottom: '30',
          widthTop: '30 1/8',
          heightLeft: '40',
          heightRight: '40.0001953120232',
          diagonalUp: '50.0750998500247',
          diagonalDown: '50',
        },
      },
    ],
  });
  const door = plan.ok ? plan.value.doors[0] : undefined;
  const drawing = door === undefined ? null : trimView(door, 'in');
  if (drawing === null) throw new Error('no door');
  const corners = (role: string) => {
    const found = drawing.shapes.find((shape): shape is Area => shape.kind === 'area' && shape.role === role);
    return [found?.path.start, ...(found?.path.runs ?? []).map(({ to }) => to)];
  };
  const text = (role: string) =>
    drawing.shapes.find((shape) => shape.kind === 'label' && shape.role === role);
  return { corners, text };
}

test('the line to trim to runs as far inside the door as it says that it is drawn larger', () => {
  // 3/16 and 1/16 on a door 30 1/4 by 40 1/4: ten times is 1 7/8, and twenty would be more than a tenth of the width.
  const { corners, text } = view('1/4');
  expect(text('times')).toMatchObject({ text: 'what comes off, 10 times as large' });
  const [a, b, c, d] = corners('trim-to');
  expect(a?.x).toBeCloseTo(0.625, 4);
  expect(b?.x).toBeCloseTo(30.25 - 1.875, 4);
  expect(c?.x).toBeCloseTo(30.25 - 0.625, 4);
  expect(d?.y).toBeCloseTo(40.25 - 1.25, 4);
  expect(text('off-right-bottom')).toMatchObject({ text: '3/16' });
});

test('where the door does not cover, the line runs outside it and the wood ends at the door’s edge', () => {
  const { corners, text } = view('0');
  const [a, , c] = corners('trim-to');
  expect(a?.x).toBeLessThan(0);
  expect(c?.x).toBeGreaterThan(30);
  for (const corner of corners('stays')) {
    expect(corner?.x).toBeGreaterThanOrEqual(0);
    expect(corner?.x).toBeLessThanOrEqual(30);
  }
  // The right edge’s line crosses the edge half-way up: as much missing at the head as comes off at the foot.
  expect(
    corners('stays').some((p) => Math.abs((p?.x ?? 0) - 30) < 1e-6 && Math.abs((p?.y ?? 0) - 20) < 0.01),
  ).toBe(true);
  expect(text('off-right-top')).toMatchObject({ text: '-\u00a01/16' });
});

test('without a survey each side has its own amount, and the line runs by it', () => {
  const plan = planFile({
    format: 1,
    job: 'x',
    units: 'in',
    doors: [
      {
        mark: 'A',
        opening: { width: '30', height: '40' },
        reveal: { left: '1/16', right: '1/8', bottom: '3/16', top: '1/4' },
      },
    ],
  });
  const door = plan.ok ? plan.value.doors[0] : undefined;
  if (door === undefined) throw new Error(JSON.stringify(plan));
  const { shapes } = trimView(door, 'in');
  const text = (role: string) =>
    shapes.flatMap((shape) => (shape.kind === 'label' && shape.role === role ? [shape.text] : []));
  expect(['left', 'right', 'bottom', 'top'].map((side) => text(`off-${side}`))).toEqual([
    ['1/16'],
    ['1/8'],
    ['3/16'],
    ['1/4'],
  ]);
  // 1/4 ten times is 2 1/2, under a tenth of 30.
  const line = shapes.find((shape): shape is Area => shape.kind === 'area' && shape.role === 'trim-to');
  expect(line?.path.start).toEqual({ x: 0.625, y: 1.875 });
  expect(line?.path.runs[1]?.to).toEqual({ x: 30 - 1.25, y: 40 - 2.5 });
});

test('a stile that came out longer has its horn drawn so at the top, in every drawing of the door', () => {
  const read = readMeasured({ doors: { 'A-1': { parts: { 'stile-left': { length: '31 1/4' } } } } }, 'in');
  const job = readJob({
    format: 1,
    job: 'x',
    units: 'in',
    doors: [{ mark: 'A', opening: { width: '16', height: '30' } }],
  });
  if (!read.ok || !job.ok) throw new Error('read');
  const plan = planJob(job.value, builtInProfile('in'), { measured: read.value });
  const door = plan.ok ? plan.value.doors[0] : undefined;
  if (door === undefined) throw new Error('no door');
  const tops = (drawing: Drawing, role: string) =>
    drawing.shapes
      .filter((shape): shape is Area => shape.kind === 'area' && shape.role === role)
      .map(({ path }) => Math.max(...[path.start, ...path.runs.map(({ to }) => to)].map(({ y }) => y)));
  // 30 high; the left top horn 1/2 + 1/4, the right one 1/2.
  expect(tops(trimView(door, 'in'), 'horn')).toEqual([0, 30.75, 0, 30.5]);
  expect(tops(doorView(door, 'in'), 'stile-left')).toEqual([30.75]);
  expect(tops(doorView(door, 'in'), 'stile-right')).toEqual([30.5]);
  expect(tops(doorView(door, 'in'), 'finished')).toEqual([30 - 1 / 16]);
});
