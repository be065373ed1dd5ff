import type { PlanStage, Units } from '../plan/plan.ts';

/**
 * What has to be set for a stage, one entry a setting: "stop at top" → "13 3/4 in". The stage itself is one of them.
 * Figures carry their units, so that jobs in inches and in millimetres never share a setting by chance.
 */
export function flatSettings(units: Units, stage: PlanStage): ReadonlyMap<string, string> {
  const flat = new Map([['stage', stage.stage]]);
  const add = (name: string, value: string | number) =>
    flat.set(name, /^\d/.test(String(value)) ? `${value} ${units}` : String(value));
  for (const [name, value] of Object.entries(stage.settings)) add(name, value);
  for (const { at, settings } of stage.places ?? [])
    for (const [name, value] of Object.entries(settings)) add(`${name} at ${at}`, value);
  return flat;
}

/** Two stages with the same key are set alike: the machine set once does both. */
export function settingKey(units: Units, stage: PlanStage): string {
  return JSON.stringify([...flatSettings(units, stage)].sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** How many settings have to be touched to go from one set-up to another: those that differ, come new or fall away. */
export function settingsChanged(from: ReadonlyMap<string, string>, to: ReadonlyMap<string, string>): number {
  const names = new Set([...from.keys(), ...to.keys()]);
  return [...names].filter((name) => from.get(name) !== to.get(name)).length;
}
