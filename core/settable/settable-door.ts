import { printLength } from '../length/print-length.ts';
import { less, times } from '../length/length.ts';
import type {
  DoorValues,
  Plan,
  PlanDoor,
  PlanPart,
  PlanStage,
  Settings,
  SettingValue,
} from '../plan/plan.ts';
import { settingFacts } from '../plan/set-or-follows.ts';
import { hangsTogether, type Together } from './hangs-together.ts';
import { lengthOf } from './numbers.ts';
import { type Lengths, reckoned, reckonedAt } from './reckoned.ts';
import type { Step } from './step.ts';
import { settableLength } from './to-step.ts';

/** As set at a step, by the step's name. */
type BySteps<T> = Map<string, T>;

const known = new WeakMap<PlanDoor, BySteps<PlanDoor>>();
/** The last door of each mark that was reckoned: doors of one mark share their values and their stages. */
const ofMark = new WeakMap<DoorValues, BySteps<{ readonly exact: PlanDoor; readonly shown: PlanDoor }>>();

function kept<K extends object, T>(all: WeakMap<K, BySteps<T>>, key: K): BySteps<T> {
  const before = all.get(key) ?? new Map<string, T>();
  all.set(key, before);
  return before;
}

/** A plan in the numbers to which machines are set at a step. */
export function settablePlan(plan: Plan, step: Step): Plan {
  return { ...plan, doors: plan.doors.map((door) => settableDoor(door, step)) };
}

/**
 * A door in the numbers to which machines are set: every length a multiple of the step, on the side on which that setting has
 * room, and what hangs on a shown number reckoned from it, so that numbers that meet still meet. What machines are not
 * set to stays: tools, counts, words, angles, and figures with six decimals. Where that leaves a tenon or a haunch thicker
 * than it may be its stage has a `pareTo` besides. Reasons and notes stay those of the exact
 * values. The same object again for the same door and step. The step is of the units in which the door is printed.
 */
export function settableDoor(door: PlanDoor, step: Step): PlanDoor {
  const [own, alike] = [kept(known, door), kept(ofMark, door.values)];
  const name = `${step.units} ${printLength(step.usual)}`;
  const before = own.get(name);
  if (before !== undefined) return before;
  const like = alike.get(name);
  const shown =
    like !== undefined && sharesStages(like.exact, door) ? coded(like.shown, door) : settled(door, step);
  own.set(name, shown);
  alike.set(name, { exact: door, shown });
  return shown;
}

/** Do two doors differ by nothing but their names, codes and notes? */
function sharesStages(one: PlanDoor, other: PlanDoor): boolean {
  return (
    one.stages === other.stages &&
    one.parts.length === other.parts.length &&
    one.parts.every(
      ({ part, stages }, k) => other.parts[k]?.part === part && other.parts[k].stages === stages,
    )
  );
}

function coded(shown: PlanDoor, { door, mark, parts, notes }: PlanDoor): PlanDoor {
  return {
    ...shown,
    door,
    mark,
    notes,
    parts: shown.parts.map((part, k) => ({ ...part, code: parts[k]?.code ?? part.code })),
  };
}

function settled(door: PlanDoor, step: Step): PlanDoor {
  const together = hangsTogether(door, step);
  const shared = new Map<PlanStage, { readonly on: string; readonly stage: PlanStage }>();
  return {
    ...door,
    values: valuesAsShown(door.values, together),
    parts: door.parts.map((part) => {
      const { length, width, thickness } = together.size(part);
      const on = `${part.length} ${part.width} ${part.thickness}`;
      return {
        ...part,
        length: printLength(length),
        width: printLength(width),
        thickness: printLength(thickness),
        stages: part.stages.map((stage) => {
          const before = shared.get(stage);
          if (before?.on === on) return before.stage;
          const now = stageAsShown(stage, together, part);
          shared.set(stage, { on, stage: now });
          return now;
        }),
      };
    }),
    stages: door.stages.map((stage) => stageAsShown(stage, together)),
  };
}

function stageAsShown(stage: PlanStage, together: Together, part?: PlanPart): PlanStage {
  const own = part === undefined ? {} : reckoned(part, stage, together);
  const shown = {
    ...stage,
    settings: settingsAsShown(stage, stage.settings, own, together),
    ...(stage.places === undefined
      ? {}
      : {
          places: stage.places.map((place) => {
            const { lengths, plunges } = reckonedAt(stage, place.at, place.settings, together);
            const settings = settingsAsShown(stage, place.settings, lengths, together);
            return { ...place, settings: plunges === undefined ? settings : { ...settings, plunges } };
          }),
        }),
  };
  // The names and sorts of a stage's settings stay as they were: only lengths are others.
  return shown as PlanStage;
}

/** Settings by name: lengths as reckoned or else as the plan has them, brought to their sides; all else as it is. */
function settingsAsShown(
  { stage }: PlanStage,
  settings: Settings,
  own: Lengths,
  { step }: Together,
): Settings {
  const { pareTo } = own;
  const told = pareTo === undefined ? settings : { ...settings, pareTo: printLength(pareTo) };
  return Object.fromEntries(
    Object.entries(told).map(([name, value]) => {
      const facts = settingFacts(stage, name);
      const exact = facts?.is === 'length' || facts === null ? lengthOf(value, step.units) : null;
      return [
        name,
        exact === null ? value : printLength(settableLength(own[name] ?? exact, facts ?? {}, step)),
      ];
    }),
  );
}

/** What a door measures: trims down, all else to the nearest; the survey's figures as they are. */
function valuesAsShown(values: DoorValues, { shoulders, bead, step }: Together): DoorValues {
  const shown = (name: string, value: unknown): unknown => {
    if (Array.isArray(value)) return value.map((each: unknown) => shown(name, each));
    if (typeof value === 'object' && value !== null) return named(value, name);
    const exact = lengthOf(value as SettingValue, step.units);
    if (exact === null) return value;
    return printLength(settableLength(exact, name.startsWith('trim') ? { rounds: 'down' } : {}, step));
  };
  const named = (tree: object, under = ''): object =>
    Object.fromEntries(Object.entries(tree).map(([name, value]) => [name, shown(`${under}${name}`, value)]));
  const { survey, ...all } = values;
  const sightWidth = less(shoulders, times(bead, 2));
  return {
    // The same names as before, their lengths alone others.
    ...(named(all) as DoorValues),
    sightWidth: printLength(settableLength(sightWidth, {}, step)),
    ...(survey === undefined ? {} : { survey }),
  };
}
