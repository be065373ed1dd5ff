import { mkdirSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { doorView } from '#core/drawing/door-view.ts';
import { layOut } from '#core/drawing/layout.ts';
import type { Figure, FigureMark } from '#core/drawing/model.ts';
import { drawn } from '#core/drawing/plan-number.ts';
import { setupView } from '#core/drawing/setup-view.ts';
import { svgOf } from '#core/drawing/svg.ts';
import { planFile } from '#core/plan/plan-file.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };

const planned = planFile(demo);
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const { doors, units } = planned.value;
const keep = process.env.KEEP_SVG;
if (keep !== undefined) mkdirSync(keep, { recursive: true });

function every(): { name: string; figure: Figure }[] {
  return doors.flatMap((door) => [
    {
      name: `${door.door}-door`,
      figure: layOut(doorView(door, units), { width: 700, height: 700, text: 18 }),
    },
    ...door.parts.flatMap((part) =>
      part.stages.flatMap((stage) =>
        (stage.places ?? [{ at: undefined }]).map(({ at }) => ({
          name: `${door.door}-${part.part}-${stage.stage}${at === undefined ? '' : `-${at}`}`,
          figure: layOut(setupView(part, stage, units, at), { width: 760, height: 420, text: 20 }),
        })),
      ),
    ),
  ]);
}

const figures = every();
if (keep !== undefined)
  for (const { name, figure } of figures) writeFileSync(`${keep}/${name}.svg`, svgOf(figure));

function isDimension(mark: FigureMark): mark is Extract<FigureMark, { kind: 'path' }> {
  return mark.kind === 'path' && mark.role === 'dimension';
}

test('every dimensioned length is drawn in its figure’s one scale within half a percent', () => {
  let counted = 0;
  for (const { name, figure } of figures)
    for (const mark of figure.marks.filter(isDimension)) {
      const run = mark.path.runs[0];
      if (run === undefined) throw new Error(`${name}: a dimension without a line`);
      const [dx, dy] = [Math.abs(run.x - mark.path.x), Math.abs(run.y - mark.path.y)];
      const long = Math.hypot(dx, dy);
      const value = drawn(mark.value);
      expect(
        Math.abs(long / figure.scale - value),
        `${name} ${mark.name ?? ''} ${mark.value ?? ''}`,
      ).toBeLessThanOrEqual(value * 0.005 + 1e-9);
      counted += 1;
    }
  expect(counted).toBeGreaterThan(300);
});

test('nothing is drawn outside its figure', () => {
  for (const { name, figure } of figures)
    for (const mark of figure.marks) {
      const points =
        mark.kind === 'text'
          ? [{ x: mark.x, y: mark.y }]
          : [{ x: mark.path.x, y: mark.path.y }, ...mark.path.runs];
      for (const { x, y } of points) {
        expect(x, `${name} ${mark.role}`).toBeGreaterThanOrEqual(-0.5);
        expect(x, `${name} ${mark.role}`).toBeLessThanOrEqual(figure.width + 0.5);
        expect(y, `${name} ${mark.role}`).toBeGreaterThanOrEqual(-0.5);
        expect(y, `${name} ${mark.role}`).toBeLessThanOrEqual(figure.height + 0.5);
      }
    }
});

test('a mortise’s start and stop are dimensioned from the end that goes to the stop', () => {
  const figure = figures.find(({ name }) => name === 'ARCH-L-1-stile-left-mortise-top')?.figure;
  const names = figure?.marks.filter(isDimension).map(({ name, value, place }) => [name, value, place]);
  expect(names).toContainEqual(['start', '27/32', 'top']);
  expect(names).toContainEqual(['stop', '4 1/32', 'top']);
  expect(svgOf(figure ?? { width: 0, height: 0, scale: 1, title: '', marks: [] })).toContain('>TOP<');
});
