import { stageOf } from '#core/plan/stage-of.ts';
import { mkdirSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { doorSetup } from '#core/views/door-setup.ts';
import { doorView } from '#core/views/door-view.ts';
import { jointSections } from '#core/views/joint-sections.ts';
import { layOut } from '#core/drawing/layout.ts';
import type { Figure, PathStroke, Stroke } from '#core/drawing/figure.ts';
import { drawn } from '#core/views/drawn.ts';
import { partView } from '#core/views/part-view.ts';
import { setupView } from '#core/views/setup-view.ts';
import { surveyView } from '#core/views/survey-view.ts';
import { svgOf } from '#core/drawing/svg.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { LANGUAGES } from '#core/words/languages.ts';
import { say, speak } from '#core/words/say.ts';
import worked from '../../fixtures/worked-example.json' with { type: 'json' };
import { plans } from './drawn-plans.ts';
import { textsOf } from '../drawing/strokes.ts';

const keep = process.env.KEEP_SVG;
if (keep !== undefined) mkdirSync(keep, { recursive: true });

function every(): { name: string; figure: Figure }[] {
  return plans.flatMap(({ doors, units }) =>
    doors.flatMap((door) => [
      {
        name: `${door.door}-door`,
        figure: layOut(doorView(door, units, 'built', 'left'), { width: 700, height: 700, text: 18 }),
      },
      ...door.stages.map((stage) => ({
        name: `${door.door}-${stage.stage}`,
        figure: layOut(doorSetup(door, stage, units, { hinge: 'right' }), {
          width: 656,
          height: 420,
          text: 20.5,
        }),
      })),
      ...jointSections(door, units).map((drawing, k) => ({
        name: `${door.door}-section-${k + 1}`,
        figure: layOut(drawing, { width: 760, height: 420, text: 20 }),
      })),
      ...[surveyView(door, units, 'left')].flatMap((drawing) =>
        drawing === null
          ? []
          : [{ name: `${door.door}-survey`, figure: layOut(drawing, { width: 700, height: 700, text: 18 }) }],
      ),
      ...door.parts.map((part) => ({
        name: `${door.door}-${part.part}`,
        figure: layOut(partView(part, units), { width: 760, height: 420, text: 16 }),
      })),
      ...door.parts.flatMap((part) =>
        part.stages.flatMap((stage) =>
          (stage.places ?? [{ at: undefined }]).map(({ at }) => ({
            name: `${door.door}-${part.part}-${stage.stage}${at === undefined ? '' : `-${at}`}`,
            figure: layOut(setupView(part, stage, units, at), { width: 656, height: 420, text: 20.5 }),
          })),
        ),
      ),
    ]),
  );
}

const figures = every();
if (keep !== undefined)
  for (const { name, figure } of figures) writeFileSync(`${keep}/${name}.svg`, svgOf(figure));

function isDimension(stroke: Stroke): stroke is PathStroke {
  return stroke.kind === 'path' && stroke.role === 'dimension';
}

test('every dimensioned length is drawn in its figure’s one scale within half a percent', () => {
  let counted = 0;
  for (const { name, figure } of figures)
    for (const stroke of figure.strokes.filter(isDimension)) {
      if (stroke.broken === true) continue;
      const run = stroke.path.runs.at(-1);
      if (run === undefined) throw new Error(`${name}: a dimension without a line`);
      const [dx, dy] = [Math.abs(run.x - stroke.path.x), Math.abs(run.y - stroke.path.y)];
      const long = Math.hypot(dx, dy);
      const value = Math.abs(drawn(stroke.value ?? ''));
      expect(
        Math.abs(long / figure.scale - value),
        `${name} ${stroke.name ?? ''} ${stroke.value ?? ''}`,
      ).toBeLessThanOrEqual(value * 0.005 + 1e-9);
      counted += 1;
    }
  expect(counted).toBeGreaterThan(600);
});

test('a dimension over a break says so, is drawn shorter than its value, and the member is broken where it is', () => {
  let counted = 0;
  for (const { name, figure } of figures) {
    for (const stroke of figure.strokes.filter(isDimension)) {
      if (stroke.broken !== true) continue;
      const where = `${name} ${stroke.name ?? ''}`;
      const { x, y, runs } = stroke.path;
      const end = runs.at(-1);
      const [first, last] = [runs[0], runs[3]];
      if (end === undefined || first === undefined || last === undefined)
        throw new Error(`${where}: no break in its line`);
      const axis = Math.abs(end.x - x) > Math.abs(end.y - y) ? 'x' : 'y';
      expect(Math.abs(end[axis] - stroke.path[axis]) / figure.scale, where).toBeLessThan(
        drawn(stroke.value ?? '') * 0.95,
      );
      // The line's break stands in the gap between the two pieces of the member.
      const pieces = figure.strokes
        .flatMap((each) =>
          each.kind === 'path' && each.role === 'outline'
            ? [[each.path, ...each.path.runs].map((point) => point[axis])]
            : [],
        )
        .map((along) => [Math.min(...along), Math.max(...along)] as const)
        .toSorted(([a], [b]) => a - b);
      expect(pieces, where).toHaveLength(2);
      const middle = (first[axis] + last[axis]) / 2;
      const teeth = 0.08 * Math.max(...pieces.map(([low, high]) => high - low));
      expect(middle, where).toBeGreaterThan((pieces[0]?.[1] ?? NaN) - teeth);
      expect(middle, where).toBeLessThan((pieces[1]?.[0] ?? NaN) + teeth);
      counted += 1;
    }
  }
  expect(counted).toBeGreaterThan(40);
});

test.each(LANGUAGES)(
  'in %s no word of a setup is cut off by its frame or too small to read at 1280',
  (language) => {
    speak(language);
    const drawings = language === 'en' ? figures : every();
    speak('en');
    const wrong: string[] = [];
    for (const { name, figure } of drawings)
      for (const { text, size, left, right, role } of textsOf(figure)) {
        if (left < -0.5 || right > figure.width + 0.5) wrong.push(`${name}: ${text} ${left} to ${right}`);
        if (
          /^(end-name|near-end|face|edge-name|stop-name|from-front)$/.test(role) &&
          size < 14 &&
          !/-door$/.test(name)
        )
          wrong.push(`${name}: ${text} is ${size} high`);
      }
    expect(wrong).toEqual([]);
  },
);

test.each(LANGUAGES)('in %s no word of a setup stands on another', (language) => {
  speak(language);
  const drawings = language === 'en' ? figures : every();
  speak('en');
  const wrong: string[] = [];
  for (const { name, figure } of drawings) {
    const texts = textsOf(figure);
    for (const [k, a] of texts.entries())
      for (const b of texts.slice(k + 1))
        if (
          (a.name === undefined || a.name !== b.name || a.place !== b.place || a.value !== b.value) &&
          Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 &&
          Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1
        )
          wrong.push(`${name}: ${a.text} / ${b.text}`);
  }
  expect(wrong).toEqual([]);
});

test('nothing is drawn outside its figure', () => {
  const outside: string[] = [];
  for (const { name, figure } of figures)
    for (const stroke of figure.strokes) {
      const points =
        stroke.kind === 'text'
          ? [{ x: stroke.x, y: stroke.y }]
          : [{ x: stroke.path.x, y: stroke.path.y }, ...stroke.path.runs];
      for (const { x, y } of points)
        if (!(x >= -0.5 && x <= figure.width + 0.5 && y >= -0.5 && y <= figure.height + 0.5))
          outside.push(`${name} ${stroke.role} ${x} ${y}`);
    }
  expect(outside).toEqual([]);
});

test('the names of a part’s ends are never higher than its stock is wide', () => {
  let counted = 0;
  for (const { name, figure } of figures) {
    const wide = figure.strokes.flatMap((stroke) =>
      stroke.kind === 'path' && stroke.role === 'outline'
        ? [stroke.path, ...stroke.path.runs].map(({ y }) => y)
        : [],
    );
    for (const stroke of figure.strokes) {
      if (stroke.kind !== 'text' || stroke.role !== 'end-name') continue;
      expect(stroke.size, name).toBeLessThanOrEqual(Math.max(...wide) - Math.min(...wide));
      counted += 1;
    }
  }
  expect(counted).toBeGreaterThan(100);
});

test('a mortise’s start and stop are dimensioned from the end that goes to the stop', () => {
  const figure = figures.find(({ name }) => name === 'ARCH-L-1-stile-left-mortise-top')?.figure;
  const names = figure?.strokes.filter(isDimension).map(({ name, value, place }) => [name, value, place]);
  expect(names).toContainEqual(['start', '27/32', 'top']);
  expect(names).toContainEqual(['stop', '4 1/32', 'top']);
  expect(svgOf(figure ?? { width: 0, height: 0, scale: 1, title: '', strokes: [] })).toContain('>TOP<');
});

test('the band saw cuts inside the line about the sander’s pivot, the sander to it, each radius ending on its own arc', () => {
  for (const name of ['ARCH-L-1', 'ROUND-1']) {
    const plan = plans.find(({ doors }) => doors.some(({ door }) => door === name));
    const rail = plan?.doors.find(({ door }) => door === name)?.parts.find(({ part }) => part === 'rail-top');
    if (rail === undefined) throw new Error(`${name} has no top rail`);
    const [saw, sander] = [stageOf(rail, 'arch'), stageOf(rail, 'smooth')];
    if (saw === undefined || sander === undefined) throw new Error(`${name} has no arched rail`);
    const { rise, chord, radius: printed } = saw.settings;
    const R = drawn(printed);
    const below = R - drawn(rise);
    // By Pythagoras, from the printed chord, rise and radius alone.
    const half = drawn(chord) / 2;
    expect(half * half + below * below).toBeCloseTo(R * R, 9);
    const centre = drawn(saw.settings.centre);
    for (const [stage, made, other] of [
      [saw, R - 1 / 32, R],
      [sander, R, R - 1 / 32],
    ] as const) {
      const { shapes } = setupView(rail, stage, 'in');
      const pivot = shapes.find((shape) => shape.kind === 'symbol' && shape.symbol === 'pivot');
      const radius = shapes.find((shape) => shape.kind === 'dimension' && shape.name === 'radius');
      if (pivot?.kind !== 'symbol' || radius?.kind !== 'dimension') throw new Error(`${name}: no pivot`);
      expect(pivot.at).toEqual({ x: centre, y: expect.closeTo(-below, 9) as number });
      expect(radius.from).toEqual(pivot.at);
      expect(radius.to.y).toBe(0);
      expect(drawn(radius.value)).toBe(made);
      expect(Math.hypot(radius.to.x - radius.from.x, radius.to.y - radius.from.y)).toBeCloseTo(made, 9);
      const radiusOf = (role: string) => {
        const found = shapes.find((shape) => shape.kind === 'area' && shape.role === role);
        const arc = found?.kind === 'area' ? found.path.runs.find(({ kind }) => kind === 'arc') : undefined;
        return arc?.kind === 'arc' ? Math.hypot(arc.to.x - arc.centre.x, arc.to.y - arc.centre.y) : NaN;
      };
      // What is cut is drawn where it is cut; the line at the saw, the sawn edge at the sander on the other side of it.
      expect(radiusOf('arch')).toBeCloseTo(made, 9);
      const beside = radiusOf(stage === saw ? 'finished-line' : 'outline');
      expect(Math.sign(beside - made)).toBe(Math.sign(other - made));
    }
  }
});

test('a door’s name, however long, stands inside its sight opening', () => {
  const long = planFile({
    format: 1,
    job: 'Long',
    units: 'in',
    doors: [{ mark: 'WWWWWWWWWWWW', opening: { width: '9', height: '60' } }],
  });
  const door = long.ok ? long.value.doors[0] : undefined;
  if (door === undefined) throw new Error('no door');
  const figure = layOut(doorView(door, 'in'), { width: 700, height: 700, text: 18 });
  const name = textsOf(figure).find(({ role }) => role === 'door-name');
  const edges = figure.strokes.flatMap((stroke) =>
    stroke.kind === 'path' && stroke.role === 'stile-left'
      ? [stroke.path, ...stroke.path.runs].map(({ x }) => x)
      : [],
  );
  expect(name?.left).toBeGreaterThan(Math.max(...edges));
  expect((name?.right ?? NaN) - (name?.left ?? NaN)).toBeLessThan(
    drawn(door.values.sightWidth) * figure.scale,
  );
});

test('on the router table a stile lies with the end nearest that brings its bead edge to the cutter, front down', () => {
  const stiles = plans[0]?.doors[0]?.parts.filter(({ part }) => part.startsWith('stile')) ?? [];
  const nearest = stiles.map((part) => {
    const bead = part.stages.find(({ stage }) => stage === 'bead');
    if (bead === undefined) throw new Error('the demo’s stiles have a bead');
    const { shapes } = setupView(part, bead, 'in');
    const said = shapes.find((shape) => shape.kind === 'label' && shape.role === 'near-end');
    return [part.part, said?.kind === 'label' ? said.text : ''];
  });
  // Seen from the front a left stile’s bead is at its right: turned over, top toward you, it is at the right again.
  expect(nearest).toEqual([
    ['stile-left', 'TOP'],
    ['stile-right', 'BOTTOM'],
  ]);
});

test('a panel is raised back down, its cutter as high above the table as the band is deep', () => {
  const panel = plans[0]?.doors[0]?.parts.find(({ part }) => part === 'panel');
  const raise = panel === undefined ? undefined : stageOf(panel, 'raise');
  if (panel === undefined || raise === undefined) throw new Error('the demo’s panels are raised');
  const { shapes } = setupView(panel, raise, 'in');
  const cutter = shapes.find((shape) => shape.kind === 'area' && shape.role === 'cutter');
  const tops = cutter?.kind === 'area' ? cutter.path.runs.map(({ to }) => to.y) : [];
  expect(Math.max(...tops)).toBeCloseTo(drawn(raise.settings.depth), 9);
  const depth = shapes.find((shape) => shape.kind === 'dimension' && shape.name === 'depth');
  expect(depth?.kind === 'dimension' ? [depth.from.y, depth.datum] : []).toEqual([0, true]);
  expect(shapes.some((shape) => shape.kind === 'label' && shape.text === 'back down')).toBe(true);
});

test.each([
  ['stile-left', 'bottom', -1],
  ['stile-left', 'top', 1],
  ['stile-right', 'bottom', 1],
  ['stile-right', 'top', -1],
] as const)('at the mortiser the %s’s %s end comes to its stop, the back toward one', (name, place, side) => {
  const planned = planFile(worked);
  const part = planned.ok ? planned.value.doors[0]?.parts.find((each) => each.part === name) : undefined;
  const stage = part === undefined ? undefined : stageOf(part, 'mortise');
  if (part === undefined || stage === undefined) throw new Error('no mortise');
  const { shapes } = setupView(part, stage, 'in', place);
  const xs = (role: string) =>
    shapes.flatMap((shape) =>
      shape.kind === 'area' && shape.role === role
        ? [shape.path.start, ...shape.path.runs.map(({ to }) => to)].map(({ x }) => x)
        : [],
    );
  // The stop stands beyond the end; the mortise is measured from there into the stile.
  expect(Math.max(...xs('stop').map((x) => x * side))).toBeGreaterThan(0.5);
  expect(Math.max(...xs('outline').map((x) => x * side))).toBeCloseTo(0, 9);
  const start = shapes.find((shape) => shape.kind === 'dimension' && shape.name === 'start');
  expect(start).toMatchObject({ from: { x: expect.closeTo(0, 9) as number }, to: { x: -side * 0.875 } });
  const words = shapes.flatMap((shape) => (shape.kind === 'label' ? [shape.text] : []));
  expect(words).toContain(say('drawing.back-toward-you'));
  expect(words).toContain(say(`drawing.${place}`));
});
