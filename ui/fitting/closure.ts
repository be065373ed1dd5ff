import { showValue, shownText } from '#core/length/reading.ts';
import type { PlanDoor } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';
import { say } from '#core/words/say.ts';
import type { MEASURES } from './survey-plan.ts';

/** The most by which the sixth measure may disagree with the other five: 1/32 in or 0.8 mm, common practice, no source. */
const MOST: Readonly<Record<Units, { readonly value: number; readonly shown: string }>> = {
  in: { value: 1 / 32, shown: '1/32' },
  mm: { value: 0.8, shown: '0.8' },
};
const LEAST: Readonly<Record<Units, string>> = { in: '1/64', mm: '0.1' };

/** What the check of six measures says: good or not, which measure is checked, and by how much it comes out longer or shorter. */
export interface Check {
  readonly good: boolean;
  readonly measure: (typeof MEASURES)[number];
  readonly words: string;
}

/** Reads the check of a survey: five measures fix the opening, and the sixth is reckoned from them. */
export function checkOf({ base, closure }: NonNullable<PlanDoor['values']['survey']>, units: Units): Check {
  const measure = base === 'width' ? 'widthTop' : 'heightRight';
  const apart = closure.replace(/^-/, '');
  const shown = showValue(apart, units);
  const good = Number(apart) <= MOST[units].value;
  const figures = {
    measure: say(`ui.survey.${measure}`),
    apart:
      shown.whole === '0'
        ? say('fit.check.under', { least: LEAST[units] })
        : shownText({ ...shown, near: false }),
    most: MOST[units].shown,
  };
  return { good, measure, words: say(good ? 'fit.check.good' : 'fit.check.again', figures) };
}
