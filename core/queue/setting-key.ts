import type { PlanStage } from '../plan/plan.ts';
import { isOfPiece } from '../plan/set-or-follows.ts';
import type { Units } from '../length/units.ts';

/**
 * What has to be set for a stage, one entry a setting: "stop at top" → "13 3/4 in". The stage itself is one of them.
 * Figures carry their units, so that jobs in inches and in millimetres never share a setting by chance. How the piece in
 * hand lies is none of them: both stops of the mortiser stand for a left and a right stile.
 */
export function flatSettings(units: Units, stage: PlanStage): ReadonlyMap<string, string> {
  return keyed(units, stage).flat;
}

/** Two stages with the same key are set alike: the machine set once does both. */
export function settingKey(units: Units, stage: PlanStage): string {
  return keyed(units, stage).key;
}

interface Keyed {
  readonly units: Units;
  readonly flat: ReadonlyMap<string, string>;
  readonly key: string;
}

/** A plan's stages never change, and a queue asks for each of them after every mark. */
const known = new WeakMap<PlanStage, Keyed>();

function keyed(units: Units, stage: PlanStage): Keyed {
  const before = known.get(stage);
  if (before?.units === units) return before;
  const flat = flattened(units, stage);
  const now = { units, flat, key: JSON.stringify([...flat].sort(([a], [b]) => (a < b ? -1 : 1))) };
  known.set(stage, now);
  return now;
}

function flattened(units: Units, stage: PlanStage): ReadonlyMap<string, string> {
  const flat = new Map<string, string>([['stage', stage.stage]]);
  const add = (name: string, value: string | number, key = name) => {
    if (isOfPiece(stage.stage, name)) return;
    flat.set(key, /^\d/.test(String(value)) ? `${value} ${units}` : String(value));
  };
  for (const [name, value] of Object.entries(stage.settings)) add(name, value);
  for (const { at, settings } of stage.places ?? [])
    for (const [name, value] of Object.entries(settings)) add(name, value, `${name} at ${at}`);
  return flat;
}

/** The settings of a set-up, named as in `flatSettings`, that have to be set when it comes after another: those that differ or come new. */
export function settingsToSet(
  from: ReadonlyMap<string, string> | null,
  to: ReadonlyMap<string, string>,
): ReadonlySet<string> {
  return new Set(
    [...to].filter(([name, value]) => name !== 'stage' && from?.get(name) !== value).map(([name]) => name),
  );
}

/** How many settings have to be touched to go from one set-up to another: those that differ, come new or fall away. */
export function settingsChanged(from: ReadonlyMap<string, string>, to: ReadonlyMap<string, string>): number {
  let alike = 0;
  let shared = 0;
  for (const [name, value] of from) {
    const other = to.get(name);
    if (other === undefined) continue;
    shared += 1;
    if (other === value) alike += 1;
  }
  return from.size + to.size - shared - alike;
}
