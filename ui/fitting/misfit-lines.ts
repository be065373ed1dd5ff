import { parseLength } from '#core/length/parse-length.ts';
import { printReal, real } from '#core/length/real.ts';
import { showValue, shownText } from '#core/length/reading.ts';
import type { Length } from '#core/length/length.ts';
import type { Units } from '#core/length/units.ts';
import { type MeasureName, misfits } from '#core/survey/misfits.ts';
import { MEASURES, type Survey } from './survey-plan.ts';

/** One of six measures that do not agree, as it is read: what it would be, and by how much it would be wrong. */
export interface MisfitLine {
  readonly measure: MeasureName;
  readonly wouldBe: string;
  readonly off: string;
}

/** What each measure would be if it were the wrong one, the largest mistake first; none while something is no length. */
export function misfitLines(survey: Survey, units: Units): MisfitLine[] {
  const read: Partial<Record<MeasureName, Length>> = {};
  for (const name of MEASURES) {
    const value = parseLength(survey[name], units);
    if (!value.ok) return [];
    read[name] = value.value;
  }
  const { widthBottom, widthTop, heightLeft, heightRight, diagonalUp, diagonalDown } = read;
  if (!widthBottom || !widthTop || !heightLeft || !heightRight || !diagonalUp || !diagonalDown) return [];
  const shown = (value: number) => shownText({ ...showValue(printReal(real(value)), units), near: false });
  return misfits({ widthBottom, widthTop, heightLeft, heightRight, diagonalUp, diagonalDown }).map(
    ({ measure, wouldBe, off }) => ({ measure, wouldBe: shown(wouldBe), off: shown(Math.abs(off)) }),
  );
}
