import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, test } from 'vitest';
import { doorView } from '#core/views/door-view.ts';
import { layOut, layOutAtScale } from '#core/drawing/layout.ts';
import type { Drawing } from '#core/drawing/model.ts';
import type { Figure, Stroke } from '#core/drawing/figure.ts';
import { area, rectangle } from '#core/drawing/shapes.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { arcCurves } from '#labels/pdf/arc-curves.ts';
import { figureOperators } from '#labels/pdf/drawing-pdf.ts';
import { newDocument } from '#labels/pdf/typeface.ts';
import { PageStream } from '#labels/pdf/page-stream.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };

const { faces } = await newDocument('test');

const figureOf = (strokes: readonly Stroke[], width = 100, height = 50): Figure => ({
  width,
  height,
  scale: 1,
  title: 'test',
  strokes,
});

test('a path is placed by its lower left corner, y turned up, and scaled', () => {
  const line: Stroke = {
    kind: 'path',
    pen: 'edge',
    fill: 'none',
    role: 'line',
    path: { x: 10, y: 50, closed: false, runs: [{ kind: 'line', x: 100, y: 0 }] },
  };
  const operators = figureOperators(figureOf([line]), faces, { x: 200, y: 300, scale: 2, weight: 1 });
  expect(operators).toContain('1.8 w [] 0 d 220 300 m 400 400 l S');
});

test('an arc stays on its circle and goes the way the figure says', () => {
  for (const [large, sweep] of [
    [false, true],
    [false, false],
    [true, true],
    [true, false],
  ] as const) {
    const radius = 500;
    const from = { x: 0, y: 0 };
    const curves = arcCurves(from, { kind: 'arc', x: 300, y: 400, radius, large, sweep });
    // The two centres that a chord of 500 allows: over its middle, off by 250·√3.
    const sign = large === sweep ? -1 : 1;
    const off = 250 * Math.sqrt(3);
    const centre = { x: 150 - (sign * off * 400) / 500, y: 200 + (sign * off * 300) / 500 };
    let begin: { x: number; y: number } = from;
    let turned = 0;
    for (const [a, b, end] of curves) {
      for (let t = 0; t <= 1; t += 0.1) {
        const [u, v] = [1 - t, t];
        const x = u * u * u * begin.x + 3 * u * u * v * a.x + 3 * u * v * v * b.x + v * v * v * end.x;
        const y = u * u * u * begin.y + 3 * u * u * v * a.y + 3 * u * v * v * b.y + v * v * v * end.y;
        expect(Math.abs(Math.hypot(x - centre.x, y - centre.y) - radius)).toBeLessThan(1e-4);
      }
      const [p, q] = [begin, end].map((each) => ({ x: each.x - centre.x, y: each.y - centre.y }));
      if (p !== undefined && q !== undefined)
        turned += Math.atan2(p.x * q.y - p.y * q.x, p.x * q.x + p.y * q.y);
      begin = end;
    }
    expect(begin).toEqual({ x: 300, y: 400 });
    // A chord as long as the radius spans 60 degrees, the other way round 300; y down, so a sweep turns positively.
    expect((turned * 180) / Math.PI).toBeCloseTo((sweep ? 1 : -1) * (large ? 300 : 60), 6);
  }
});

test('hatching is cut off at the outline, what is removed leans the other way', () => {
  const hatched = (fill: 'section' | 'waste'): string =>
    figureOperators(
      figureOf([
        {
          kind: 'path',
          pen: 'none',
          fill,
          role: 'wood',
          path: {
            x: 10,
            y: 10,
            closed: true,
            runs: [
              { kind: 'line', x: 30, y: 10 },
              { kind: 'line', x: 30, y: 30 },
            ],
          },
        },
      ]),
      faces,
      { x: 0, y: 0, weight: 1 },
    );
  expect(hatched('section')).toMatch(/10 40 m 30 40 l 30 20 l h W f .* -10 20 m 10 40 l/s);
  expect(hatched('waste')).toMatch(/ -10 40 m 10 20 l/);
});

test('a drawing at a scale is exactly as large as the wood', () => {
  const drawing: Drawing = {
    title: 'square',
    units: 'in',
    shapes: [area(rectangle(1, 2, 4, 3), 'outline', 'none')],
  };
  const { figure, left, bottom } = layOutAtScale(drawing, 72, { text: 9 });
  const operators = figureOperators(figure, faces, { x: 100 - left, y: 200 - bottom });
  expect(operators).toContain('100 200 m 316 200 l 316 272 l 100 272 l h');
});

test('a door drawn on a page carries every text of its figure, and values stand where the figure says', async () => {
  const planned = planFile(demo);
  const door = planned.ok ? planned.value.doors.find(({ mark }) => mark === 'ARCH-L') : undefined;
  if (door === undefined) throw new Error('the demo job has a door ARCH-L');
  const figure = layOut(doorView(door, 'in'), { width: 500, height: 700, text: 10 });
  const { document, faces: own } = await newDocument('door');
  const page = new PageStream(own);
  page.clipped(0, 0, { width: 612, height: 792 }, () => page.figure(figure, { x: 50, y: 40 }));
  page.finish(document, { width: 612, height: 792 });
  const read = await getDocument({ data: await document.save(), verbosity: 0 }).promise;
  const sheet = await read.getPage(1);
  const content = await sheet.getTextContent();
  const texts = content.items.flatMap((item) =>
    'str' in item && item.str.trim() !== ''
      ? [{ text: item.str, at: item.transform.slice(4) as number[] }]
      : [],
  );
  const expected = figure.strokes.flatMap((stroke) => (stroke.kind === 'text' ? [stroke] : []));
  expect(texts.map(({ text }) => text).toSorted()).toEqual(expected.map(({ text }) => text).toSorted());
  const name = expected.find(({ text }) => text === door.door);
  const shown = texts.find(({ text }) => text === door.door);
  expect(shown?.at[1]).toBeCloseTo(40 + 700 - (name?.y ?? 0), 2);
  const operators = await sheet.getOperatorList();
  expect(operators.fnArray.filter((each) => each === OPS.clip).length).toBeGreaterThanOrEqual(1);
});
