import type { Length } from '../length/length.ts';
import { printLength } from '../length/print-length.ts';
import { printReal, type Real } from '../length/real.ts';
import { typeLength } from '../length/type-length.ts';
import type { Entry, PartDraft, StageDraft } from '../joint/stage-draft.ts';
import { hasWords, type Language, say } from '../words/say.ts';
import type { Allowed, PlanPart, PlanStage, Settings, SettingValue, Why } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';

/** In which units and language it is said why a value is what it is. */
export interface WhySaid {
  readonly units: Units;
  readonly language: Language;
}

/** A part's draft as the plan prints it, but for its code. A stage that parts share is printed once, kept in `printed`. */
export function printPart(
  draft: PartDraft,
  why: WhySaid | null,
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

/**
 * A stage's settings by name, its places in order, what comes before it, and on request why each value is what it is.
 */
export function printStage(draft: StageDraft, why: WhySaid | null): PlanStage {
  const { stage, station, entries, places, after } = draft;
  const printed = {
    stage,
    station,
    settings: settingsOf(entries),
    ...(places === undefined
      ? {}
      : {
          places: places.map((place) => ({
            at: place.at,
            settings: settingsOf(place.entries),
            ...(why === null ? {} : explained(place.entries, why)),
          })),
        }),
    after,
    ...(why === null ? {} : explained(entries, why)),
  };
  // A draft's entries and a plan's settings are made from one table of the kind: an entry prints as that says.
  return printed as PlanStage;
}

/** Entries by name; undefined where the stage lacks the setting. */
type Entries = Readonly<Record<string, Entry | undefined>>;

function settingsOf(entries: Entries): Settings {
  const settings: Record<string, SettingValue> = {};
  for (const name in entries) {
    const entry = entries[name];
    if (entry !== undefined) settings[name] = printValue(entry.value);
  }
  return settings;
}

function printValue(value: Entry['value']): SettingValue {
  return value.kind === 'exact'
    ? printLength(value.value)
    : value.kind === 'real'
      ? printReal(value.value)
      : value.value;
}

/** Why each setting is what it is; and by how much it may be off, where that is known of any. */
function explained(
  entries: Entries,
  why: WhySaid,
): { why: Record<string, Why>; allow?: Record<string, Allowed> } {
  const allow = allowOf(entries, why.language);
  return { why: whyOf(entries, why), ...(Object.keys(allow).length === 0 ? {} : { allow }) };
}

function allowOf(entries: Entries, language: Language): Record<string, Allowed> {
  const allowed: Record<string, Allowed> = {};
  for (const [name, entry] of Object.entries(entries)) {
    if (entry?.allow === undefined) continue;
    const { less, more, lessBy, moreBy } = entry.allow;
    allowed[name] = {
      less: printLength(less),
      more: printLength(more),
      lessBy: say(lessBy, {}, language),
      moreBy: say(moreBy, {}, language),
    };
  }
  return allowed;
}

function whyOf(entries: Entries, { units, language }: WhySaid): Record<string, Why> {
  const why: Record<string, Why> = {};
  for (const [name, entry] of Object.entries(entries)) {
    if (entry === undefined) continue;
    const { value, from, reason, figures } = entry;
    const told = Object.entries({ ...figures, value: value.value });
    const sum = Object.fromEntries(told.map(([key, figure]) => [key, tellFigure(figure, units, language)]));
    why[name] = {
      from: say(from, {}, language),
      datum: from.slice('from.'.length),
      reason: say(reason, sum, language),
    };
  }
  return why;
}

/** A figure as it stands in a sum: exact, in millimetres as decimals where they come to an end; a word in the language. */
function tellFigure(
  figure: Length | Real | number | string,
  units: Units,
  language: Language,
): string | number {
  if (typeof figure === 'object') return typeLength(figure, units);
  const key = `named.${figure}`;
  if (hasWords(key)) return say(key, {}, language);
  return typeof figure === 'number' && !Number.isInteger(figure) ? printReal(figure as Real) : figure;
}
