import type { Length } from '../length/length.ts';
import { printLength } from '../length/print-length.ts';
import { printReal, type Real } from '../length/real.ts';
import { typeLength } from '../length/type-length.ts';
import type { Entry, PartDraft, StageDraft } from '../joint/stage-draft.ts';
import { say } from '../words/say.ts';
import type { PlanPart, PlanStage, Settings, SettingValue, Why } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';

/** A part's draft as the plan prints it, but for its code. A stage that parts share is printed once, kept in `printed`. */
export function printPart(
  draft: PartDraft,
  why: Units | null,
  printed: Map<StageDraft, PlanStage> = new Map(),
): Omit<PlanPart, 'code'> {
  return {
    part: draft.part,
    length: printLength(draft.length),
    width: printLength(draft.width),
    thickness: printLength(draft.thickness),
    stages: draft.stages.map((stage) => {
      const known = printed.get(stage) ?? printStage(stage, why);
      printed.set(stage, known);
      return known;
    }),
  };
}

/** A stage's settings by name, its places in order, what comes before it, and on request (in the job's units) why each value is what it is. */
export function printStage(draft: StageDraft, why: Units | null): PlanStage {
  return {
    stage: draft.stage,
    station: draft.station,
    settings: settingsOf(draft.entries),
    ...(draft.places === undefined
      ? {}
      : {
          places: draft.places.map(({ at, entries }) => ({
            at,
            settings: settingsOf(entries),
            ...(why === null ? {} : { why: whyOf(entries, why) }),
          })),
        }),
    after: draft.after,
    ...(why === null ? {} : { why: whyOf(draft.entries, why) }),
  };
}

function settingsOf(entries: readonly Entry[]): Settings {
  const settings: Record<string, SettingValue> = {};
  for (const { name, value } of entries) settings[name] = printValue(value);
  return settings;
}

function printValue(value: Entry['value']): SettingValue {
  return value.kind === 'exact'
    ? printLength(value.value)
    : value.kind === 'real'
      ? printReal(value.value)
      : value.value;
}

function whyOf(entries: readonly Entry[], units: Units): Record<string, Why> {
  return Object.fromEntries(
    entries.map(({ name, value, from, reason, figures }) => {
      const told = Object.entries({ ...figures, value: value.value });
      const sum = Object.fromEntries(told.map(([key, figure]) => [key, tellFigure(figure, units)]));
      return [name, { from: say(from), reason: say(reason, sum) }];
    }),
  );
}

/** A figure as it stands in a sum: exact, in millimetres as decimals where they come to an end. */
function tellFigure(figure: Length | Real | number | string, units: Units): string | number {
  if (typeof figure === 'object') return typeLength(figure, units);
  return typeof figure === 'number' && !Number.isInteger(figure) ? printReal(figure as Real) : figure;
}
