import type { Length } from '../length/length.ts';
import { printLength } from '../length/print-length.ts';
import { printReal, type Real } from '../length/real.ts';
import type { Entry, PartDraft, StageDraft } from '../joint/stage-draft.ts';
import { say } from '../words/say.ts';
import type { PlanPart, PlanStage, Settings, SettingValue, Why } from './plan.ts';

/** A part's draft as the plan prints it, but for its code. A stage that parts share is printed once, kept in `printed`. */
export function printPart(
  draft: PartDraft,
  why: boolean,
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

/** A stage's settings by name, its places in order, what comes before it, and on request why each value is what it is. */
export function printStage(draft: StageDraft, why: boolean): PlanStage {
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
            ...(why ? { why: whyOf(entries) } : {}),
          })),
        }),
    after: draft.after,
    ...(why ? { why: whyOf(draft.entries) } : {}),
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

function whyOf(entries: readonly Entry[]): Record<string, Why> {
  return Object.fromEntries(
    entries.map(({ name, value, from, reason, figures }) => [
      name,
      { from: say(from), reason: say(reason, { ...printFigures(figures), value: printValue(value) }) },
    ]),
  );
}

function printFigures(figures: Entry['figures']): Record<string, string | number> {
  return Object.fromEntries(Object.entries(figures).map(([name, figure]) => [name, printFigure(figure)]));
}

function printFigure(figure: Length | Real | number | string): string | number {
  if (typeof figure === 'string') return figure;
  return typeof figure === 'number' ? printReal(figure as Real) : printLength(figure);
}
