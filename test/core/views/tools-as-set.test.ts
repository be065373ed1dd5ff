import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Area, Drawing } from '#core/drawing/model.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { PlanPart, Settings } from '#core/plan/plan.ts';
import { isStageOf, stageOf, stagesOf } from '#core/plan/stage-of.ts';
import { USUAL_ROUNDING } from '#core/length/reading.ts';
import { paredAt } from '#core/settable/pared-at.ts';
import { screenStep } from '#core/settable/step.ts';
import { kindOf } from '#core/stages/stage-id.ts';
import { drawn } from '#core/views/drawn.ts';
import { setupView } from '#core/views/setup-view.ts';
import { shortName } from '#core/telling/names.ts';
import worked from '../../fixtures/worked-example.json' with { type: 'json' };
import { randomDoor } from '../../assembly/random-door.ts';
import { everyStageJob } from '../../e2e/every-stage-job.ts';
import { samples } from '../../samples.ts';
import { withRole } from './as-set.ts';

function partsOf(job: unknown): readonly PlanPart[] {
  const planned = planFile(job);
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  return planned.value.doors[0]?.parts ?? [];
}

const parts = [...partsOf(worked), ...partsOf(everyStageJob('in'))];

const cornersOf = ({ path }: Area) => [path.start, ...path.runs.map(({ to }) => to)];
const xs = (each: Area) => cornersOf(each).map(({ x }) => x);
const ys = (each: Area) => cornersOf(each).map(({ y }) => y);

/** The one area of a role. */
function only(drawing: Drawing, role: string): Area {
  const [first, ...more] = withRole(drawing, role);
  if (first === undefined || more.length > 0) throw new Error(`${drawing.title}: not one ${role}`);
  return first;
}

/** The stop stands at the piece's end, the table under its sight edge, the gauge over it. */
function standsBetween(drawing: Drawing): void {
  expect(Math.max(...xs(only(drawing, 'stop')))).toBe(0);
  expect(Math.max(...ys(only(drawing, 'table')))).toBeCloseTo(0, 12);
  const wood = [...withRole(drawing, 'outline'), ...withRole(drawing, 'side')].flatMap(ys);
  expect(Math.min(...ys(only(drawing, 'gauge')))).toBeCloseTo(Math.max(...wood), 9);
}

test('a mitre’s blade leans toward the stop, its far face where it is set, and the finished line is beyond it', () => {
  let counted = 0;
  for (const part of parts)
    for (const stage of part.stages) {
      if (!isStageOf(stage, 'mitre') && !isStageOf(stage, 'mitre-end')) continue;
      const drawing = setupView(part, stage, 'in');
      const broken = drawing.shapes.some((each) => each.kind === 'dimension' && each.brokenAt !== undefined);
      standsBetween(drawing);
      const cut = only(drawing, 'mitre');
      const [low, tip] = cornersOf(cut);
      if (low === undefined || tip === undefined) throw new Error('no cut');
      // The cut rises by the blade's height and comes as much nearer to the stop: 45 degrees.
      expect(low.y).toBe(0);
      expect(tip.y).toBeCloseTo(drawn(stage.settings.height), 9);
      expect(low.x - tip.x).toBeCloseTo(tip.y, 9);
      const set = drawn(stage.settings.sightEdge) - 1 / 64;
      if (!broken) expect(low.x).toBeCloseTo(set, 9);
      // Every corner of the blade is on the cut or on the stop's side of it.
      for (const { x, y } of cornersOf(only(drawing, 'blade')))
        expect(x + y).toBeLessThanOrEqual(low.x + 1e-9);
      for (const { x, y } of cornersOf(only(drawing, 'finished-line')))
        expect(x + y).toBeGreaterThanOrEqual(low.x + 1 / 64 - 1e-9);
      counted += 1;
    }
  expect(counted).toBeGreaterThan(12);
});

test('a notch shows its first cut with the near face on the one line, its last with the far face on the other', () => {
  const plain = {
    format: 1,
    job: 'Notched',
    units: 'in',
    doors: [{ mark: 'N', opening: { width: '16', height: '30' } }],
  };
  let counted = 0;
  for (const part of [...parts, ...partsOf(plain)])
    for (const stage of stagesOf(part, 'notch')) {
      const drawing = setupView(part, stage, 'in');
      standsBetween(drawing);
      const [first, last, ...more] = withRole(drawing, 'blade');
      const notch = only(drawing, 'notch');
      if (first === undefined || last === undefined || more.length > 0) throw new Error('not two cuts');
      expect(Math.min(...xs(first))).toBe(Math.min(...xs(notch)));
      expect(Math.max(...xs(last))).toBe(Math.max(...xs(notch)));
      expect(Math.max(...xs(notch)) - Math.min(...xs(notch))).toBeCloseTo(drawn(stage.settings.length), 9);
      for (const each of [first, last, notch])
        expect(Math.max(...ys(each))).toBeCloseTo(drawn(stage.settings.height), 9);
      counted += 1;
    }
  expect(counted).toBeGreaterThan(5);
});

test('shoulders and cheeks: a blade with its far face at the shoulder, as high over the table as it is set', () => {
  for (const part of parts.filter(({ part: name }) => name.startsWith('rail')))
    for (const stage of [stageOf(part, 'shoulder'), stageOf(part, 'cheek')]) {
      const shoulder = stageOf(part, 'shoulder');
      if (stage === undefined || shoulder === undefined) throw new Error('no shoulders');
      const drawing = setupView(part, stage, 'in');
      const blade = only(drawing, 'blade');
      expect(Math.max(...xs(blade))).toBe(drawn(shoulder.settings.stop));
      expect(Math.max(...ys(blade))).toBe(drawn(stage.settings.height));
      expect(drawing.shapes.some((each) => each.kind === 'label' && each.role === 'blade-name')).toBe(true);
      if (stage === shoulder) standsBetween(drawing);
    }
});

test('a tenon is drawn once for each edge, down on the table, each blade at its own stop and height', () => {
  for (const part of parts.filter(({ part: name }) => name.startsWith('rail'))) {
    const stage = stageOf(part, 'tenon');
    if (stage === undefined) throw new Error('no tenon');
    const { outerStop, outerHeight, innerStop, innerHeight } = stage.settings;
    const wanted = [
      ...(outerStop === undefined || outerHeight === undefined ? [] : [[outerStop, outerHeight]]),
      [innerStop, innerHeight],
    ].map((each) => each.map(drawn));
    const drawing = setupView(part, stage, 'in');
    const stops = withRole(drawing, 'stop').map((each) => Math.max(...xs(each)));
    const found = withRole(drawing, 'blade').map((each, k) => [
      Math.max(...xs(each)) - (stops[k] ?? NaN),
      Math.max(...ys(each)),
    ]);
    expect(found).toEqual(wanted.map((each) => each.map((value) => expect.closeTo(value, 9) as number)));
    expect(wanted).toHaveLength(part.part.startsWith('rail-mid') ? 1 : 2);
    for (const each of withRole(drawing, 'table')) expect(Math.max(...ys(each))).toBeCloseTo(0, 12);
    for (const each of withRole(drawing, 'gauge')) expect(Math.min(...ys(each))).toBe(drawn(part.width));
  }
});

test('the blade of the groove stands its own width beyond the fence, in both passes', () => {
  for (const part of parts) {
    const stage = stageOf(part, 'groove');
    if (stage === undefined) continue;
    const drawing = setupView(part, stage, 'in');
    const fences = withRole(drawing, 'fence').map((each) => Math.min(...xs(each)));
    const far = withRole(drawing, 'blade').map((each, k) => (fences[k] ?? NaN) - Math.max(...xs(each)));
    expect(far).toHaveLength(2);
    for (const each of far) expect(each).toBeCloseTo(drawn(stage.settings.fence), 9);
  }
});

test('the panel’s head is sawn outside its line, 1/32 from it', () => {
  let counted = 0;
  for (const part of parts) {
    const stage = stageOf(part, 'cutout');
    if (stage === undefined) continue;
    const drawing = setupView(part, stage, 'in');
    const radiusOf = (role: string) => {
      const arc = only(drawing, role).path.runs.find(({ kind }) => kind === 'arc');
      return arc?.kind === 'arc' ? Math.hypot(arc.to.x - arc.centre.x, arc.to.y - arc.centre.y) : NaN;
    };
    const line = drawn(stage.settings.radius);
    expect(radiusOf('head')).toBeCloseTo(line + 1 / 32, 9);
    expect(radiusOf('finished-line')).toBeLessThanOrEqual(line + 1e-9);
    counted += 1;
  }
  expect(counted).toBe(2);
});

test('no drawing of a door without a bead speaks of one', () => {
  const spoken = new Set<string>();
  let counted = 0;
  fc.assert(
    fc.property(randomDoor, (fields) => {
      const planned = planFile({ format: 1, job: 'x', units: 'in', doors: [{ ...fields, bead: '0' }] });
      if (!planned.ok) return;
      for (const part of planned.value.doors[0]?.parts ?? [])
        for (const stage of part.stages)
          for (const { at } of stage.places ?? [{ at: undefined }]) {
            const { title, shapes } = setupView(part, stage, 'in', at);
            const words = shapes.flatMap((each) =>
              each.kind === 'label'
                ? [each.text]
                : each.kind === 'dimension'
                  ? [shortName(each.name, 'en', stage.stage)]
                  : [],
            );
            counted += words.length;
            for (const text of [title, ...words])
              if (/bead/i.test(text)) spoken.add(`${kindOf(stage.stage) ?? ''}: ${text}`);
          }
    }),
    { numRuns: samples(30, 500) },
  );
  expect(counted).toBeGreaterThan(500);
  expect([...spoken]).toEqual([]);
});

test('on a screen the drawing has the very number that is told beside it, to the step that is read there', () => {
  const steps = [screenStep('decimals', USUAL_ROUNDING), screenStep('fractions', USUAL_ROUNDING)];
  for (const step of steps)
    for (const part of parts)
      for (const [stage, name] of [
        [stageOf(part, 'mitre'), 'sightEdge'],
        [stageOf(part, 'strip'), 'fence'],
        [stageOf(part, 'arch'), 'radius'],
        [stageOf(part, 'cutout'), 'radius'],
      ] as const) {
        if (stage === undefined) continue;
        const settings: Settings = stage.settings;
        const told = paredAt(stage.stage, name, settings[name] ?? '', step)?.set;
        const place = stage.places?.[0]?.at;
        const { shapes } = setupView(part, stage, 'in', place, step);
        const shown = shapes.find((each) => each.kind === 'dimension' && each.name === name);
        expect(told).toBeDefined();
        expect(shown).toMatchObject({ value: told, isSet: true });
      }
});
