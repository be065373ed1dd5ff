import { fineRounding, showValue, shownText, USUAL_ROUNDING } from '#core/length/reading.ts';
import type { Units } from '#core/length/units.ts';
import { measuredFrom } from '#core/plan/measured-from.ts';
import type { PlanStage, Settings, SettingValue, WhyTable } from '#core/plan/plan.ts';
import { settingFacts } from '#core/plan/set-or-follows.ts';
import { paredAt } from '#core/settable/pared-at.ts';
import { paperStep } from '#core/settable/step.ts';
import { placeName, settingName } from '#core/telling/names.ts';
import { hasWords, say } from '#core/words/say.ts';
import { asText } from '../pdf/value-on-paper.ts';

/**
 * One setting as it stands on a card: its name, its value, and what it is measured from. Where the machine is set beside
 * the line, the value is what to set and the line stands behind it.
 */
export interface CardLine {
  /** Its place on the part, where a stage is set at several. */
  readonly place: string;
  readonly name: string;
  readonly value: string;
  readonly from: string;
}

/** A stage's settings in the plan's order, then those of its places. */
export function settingLines(stage: PlanStage, units: Units): CardLine[] {
  return [
    ...linesOf(stage, stage.settings, stage.why, units, ''),
    ...(stage.places ?? []).flatMap(({ at, settings, why }) =>
      linesOf(stage, settings, why, units, placeName(at)),
    ),
  ];
}

function linesOf(
  { stage }: PlanStage,
  settings: Settings,
  why: WhyTable | undefined,
  units: Units,
  place: string,
): CardLine[] {
  // How the piece lies is told by the steps, for each part of those that share the set-up.
  const set = Object.entries(settings).filter(([name]) => settingFacts(stage, name)?.ofPiece !== true);
  return set.map(([name, value]) => {
    // An angle is set to nothing that a rule is laid on.
    const datum = settingFacts(stage, name)?.is === 'angle' ? null : measuredFrom(why?.[name]);
    const from = datum === null ? '' : say('paper.from', { from: datum });
    const called = settingName(name, undefined, stage);
    const pare = paredAt(stage, name, value, paperStep(units));
    if (pare === null) return { place, name: called, value: shown(name, value, units), from };
    return {
      place,
      name: called,
      value: say('paper.set-line', { set: fine(pare.set, units), line: fine(String(value), units) }),
      from,
    };
  });
}

/** Words and counts stand for themselves; lengths are rounded for reading as everywhere, with the sign for "about". */
function shown(name: string, value: SettingValue, units: Units): string {
  if (name === 'tilt') return `${value}°`;
  const key: string = `value.${value}`;
  if (typeof value === 'string' && hasWords(key)) return say(key);
  return asText(value, units);
}

/** As fine as what is left beside the line. */
function fine(value: string, units: Units): string {
  return shownText(showValue(value, units, fineRounding(USUAL_ROUNDING)));
}
