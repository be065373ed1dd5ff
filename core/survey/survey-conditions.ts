import type { Findings } from '../joint/findings.ts';
import type { Limits } from '../length/limits.ts';
import { length } from '../length/length.ts';
import { real, realOf } from '../length/real.ts';
import type { DoorSpec } from '../job/job.ts';
import type { Units } from '../length/units.ts';
import { type Fit, leastTakeOff } from './fit-opening.ts';

/** What the survey of an opening says of its measures and of the door: measure again, or build it larger. */
export function surveyConditions(
  fit: Fit | null,
  spec: Pick<DoorSpec, 'oversize' | 'survey'>,
  limits: Limits,
  units: Units,
  found: Findings,
): void {
  if (spec.survey === undefined) return;
  if (fit === null) {
    found.fault('survey-impossible', 'survey');
    return;
  }
  if (Math.abs(fit.opening.closure) > realOf(limits.thirtySecond))
    found.warn('closure', 'survey', { closure: real(Math.abs(fit.opening.closure)) });
  const { across, along } = leastTakeOff(fit);
  const worst = Math.min(across, along);
  if (worst >= 0) return;
  const step = units === 'in' ? 32 : 2;
  const more = (least: number, now: number) =>
    length(Math.ceil((now + 2 * Math.max(0, -least)) * step - 1e-6), step);
  found.warn('does-not-cover', 'oversize', {
    where: { words: across <= along ? 'named.sides' : 'named.ends' },
    missing: real(-worst),
    width: more(across, realOf(spec.oversize.width)),
    height: more(along, realOf(spec.oversize.height)),
  });
}
