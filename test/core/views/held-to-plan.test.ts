import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Dimension, Drawing } from '#core/drawing/model.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { PlanDoor } from '#core/plan/plan.ts';
import { isDoorStage, kindOf } from '#core/stages/stage-id.ts';
import { factsOf, STAGE_KINDS, type StageKind } from '#core/stages/table.ts';
import type { SettingTable } from '#core/stages/setting.ts';
import { settableDoor } from '#core/settable/settable-door.ts';
import { readStep, STEPS } from '#core/settable/step.ts';
import { doorSetup } from '#core/views/door-setup.ts';
import { drawn } from '#core/views/drawn.ts';
import { NOT_DRAWN } from '#core/views/not-drawn.ts';
import { setupView } from '#core/views/setup-view.ts';
import { say } from '#core/words/say.ts';
import { randomDoor } from '../../assembly/random-door.ts';
import { everyStageJob } from '../../e2e/every-stage-job.ts';
import type { LooseStage } from '../../loose-plan.ts';
import { samples } from '../../samples.ts';
import { asSet, dimensionsOf, misdrawnBy, withPen } from './as-set.ts';

/** What a stage sets at one place of it, or everywhere, with the drawing that shows it. */
interface Shown {
  readonly kind: StageKind;
  readonly stage: string;
  readonly units: 'in' | 'mm';
  readonly where: string;
  readonly place?: string;
  readonly table: SettingTable;
  readonly settings: LooseStage['settings'];
  readonly drawing: Drawing;
}

/** Every set-up of a door with its drawing: of its parts' stages and of its own, place by place. */
function shownOf(door: PlanDoor, units: 'in' | 'mm'): Shown[] {
  const ofParts = door.parts.flatMap((part) =>
    part.stages.flatMap((stage): Shown[] => {
      const kind = kindOf(stage.stage);
      if (kind === null) throw new Error(`no kind has the stage ${stage.stage}`);
      const where = `${door.door} ${part.part} ${stage.stage}`;
      const { settings: table, place: atPlace = {} } = factsOf(kind);
      const whole = { kind, stage: stage.stage, units, where, table, settings: stage.settings };
      if (stage.places === undefined) return [{ ...whole, drawing: setupView(part, stage, units) }];
      const places: NonNullable<LooseStage['places']> = stage.places;
      const drawings = stage.places.map(({ at }) => setupView(part, stage, units, at));
      return drawings.flatMap((drawing, k) => {
        const place = places[k];
        if (place === undefined) throw new Error(`${where}: no place`);
        const own = {
          kind,
          stage: stage.stage,
          units,
          where: `${where} ${place.at}`,
          place: place.at,
        };
        return [
          { ...whole, drawing },
          { ...own, table: atPlace, settings: place.settings, drawing },
        ];
      });
    }),
  );
  const ofDoor = door.stages.map((stage): Shown => {
    const kind = kindOf(stage.stage);
    if (kind === null) throw new Error(`no kind has the stage ${stage.stage}`);
    const where = `${door.door} ${stage.stage}`;
    const { settings: table } = factsOf(kind);
    const drawing = doorSetup(door, stage, units);
    return { kind, stage: stage.stage, units, where, table, settings: stage.settings, drawing };
  });
  return [...ofParts, ...ofDoor];
}

const isLength = ({ is }: SettingTable[string]) => is === 'length' || is === 'real';

/** Names of the lengths of a set-up that its drawing dimensions, each with what the machine is set to by the plan. */
function dimensioned({ stage, units, where, place, table, settings, drawing }: Shown): Set<string> {
  const dimensions = dimensionsOf(drawing);
  const found = new Set<string>();
  for (const [name, value] of Object.entries(settings)) {
    const facts = table[name];
    if (facts === undefined || !isLength(facts)) continue;
    const own = dimensions.filter(
      (each) => each.name === name && (place === undefined || each.place === place),
    );
    const set = asSet(stage, name, value, units);
    for (const each of own) expect(each.value, `${where}: the dimension ${name}`).toBe(set);
    if (own.length > 0) found.add(name);
    if (set !== value) besideItsLine(drawing, own, `${where}: ${name}`);
  }
  return found;
}

/** Where a machine is set beside a line the number is named as set, and the line is a ghost with its name. */
function besideItsLine(drawing: Drawing, own: readonly Dimension[], where: string): void {
  expect(
    own.map(({ isSet }) => isSet),
    where,
  ).toEqual([true]);
  expect(withPen(drawing, 'ghost').length, `${where}: its finished line`).toBeGreaterThan(0);
  const words = drawing.shapes.flatMap((shape) => (shape.kind === 'label' ? [shape.text] : []));
  expect(words, where).toContain(say('drawing.finished-line'));
}

const listed = (kind: StageKind): Readonly<Record<string, string>> => NOT_DRAWN[kind] ?? {};

/** A door in the plan's values and in those that a machine is set to at the coarsest step: drawings are made of either. */
function exactAndSettable(door: PlanDoor, units: 'in' | 'mm'): PlanDoor[] {
  const step = readStep(STEPS[units][0], units);
  if (step === null) throw new Error('no step');
  return [door, settableDoor(door, step)];
}

/** What was looked at, and what is not as it should be. */
interface Tally {
  readonly drawn: Set<string>;
  readonly lacking: Set<string>;
  readonly misdrawn: Set<string>;
  readonly kinds: Set<StageKind>;
}

/** A drawing is in one scale: within so much of what its numbers say. */
const SCALE = 0.005;

function look(door: PlanDoor, units: 'in' | 'mm', tally: Tally): void {
  for (const shown of shownOf(door, units)) {
    const { kind, table, settings } = shown;
    tally.kinds.add(kind);
    const has = dimensioned(shown);
    for (const name of has) tally.drawn.add(`${kind} ${name}`);
    // A door's own drawing is put together from parts that are each rounded by themselves.
    for (const each of isDoorStage(shown.stage) ? [] : dimensionsOf(shown.drawing))
      if (misdrawnBy(each) > SCALE) tally.misdrawn.add(`${kind} ${each.name}`);
    for (const [name, value] of Object.entries(settings)) {
      const facts = table[name];
      // Nothing is as long as that: a notch from the very end.
      if (value === '0') continue;
      if (facts === undefined || !isLength(facts) || has.has(name) || name in listed(kind)) continue;
      tally.lacking.add(`${kind} ${name}`);
    }
  }
}

test('every length of every stage is dimensioned in its drawing, in its scale, as the machine is set by the plan, beside its line where one is left; or is listed with the reason why not', () => {
  const tally: Tally = { drawn: new Set(), lacking: new Set(), misdrawn: new Set(), kinds: new Set() };
  for (const units of ['in', 'mm'] as const) {
    const planned = planFile(everyStageJob(units));
    if (!planned.ok) throw new Error('the job has faults');
    for (const door of planned.value.doors.flatMap((each) => exactAndSettable(each, units)))
      look(door, units, tally);
  }
  fc.assert(
    fc.property(randomDoor, (fields) => {
      const planned = planFile({ format: 1, job: 'x', units: 'in', doors: [fields] });
      if (!planned.ok) return;
      for (const door of planned.value.doors.flatMap((each) => exactAndSettable(each, 'in')))
        look(door, 'in', tally);
    }),
    { numRuns: samples(40, 1000) },
  );
  expect([...tally.lacking].sort()).toEqual([]);
  expect([...tally.misdrawn].sort()).toEqual([]);
  const notDrawn = Object.entries(NOT_DRAWN).flatMap(([kind, names]) =>
    Object.entries(names).map(([name, reason]) => ({ name: `${kind} ${name}`, reason })),
  );
  expect(notDrawn.filter(({ name }) => tally.drawn.has(name))).toEqual([]);
  expect(notDrawn.filter(({ reason }) => !/\w+ \w+/.test(reason))).toEqual([]);
  expect(tally.kinds.size).toBe(STAGE_KINDS.length);
});

test('a drawing refuses a value that is none', () => {
  expect(() => drawn('')).toThrow(/needs a number/);
  expect(() => drawn('left')).toThrow(/needs a number/);
  expect(drawn('-1 1/4')).toBe(-1.25);
});
