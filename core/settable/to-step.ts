import { type Length, over, sign, times, ZERO } from '../length/length.ts';
import type { SettingFacts } from '../stages/setting.ts';
import type { Step } from './step.ts';

/** To which side a length is brought that is no multiple of the step. */
export type Side = NonNullable<SettingFacts['rounds']> | 'nearest';

/** A length as a multiple of a step: the one below, the one above, or the nearer, of two as near the larger. */
export function toMultiple(value: Length, side: Side, step: Length): Length {
  const count = over(value, step);
  if (count.d === 1n) return value;
  const whole =
    side === 'down' ? count.floor() : side === 'up' ? count.ceil() : count.mul(2).add(1).div(2).floor();
  return times(step, whole.valueOf());
}

type Rounded = Pick<SettingFacts, 'rounds' | 'fine' | 'tool'>;

/** A setting as a machine is set to it, never under zero; a tool's own size as it is. */
export function settableLength(value: Length, { rounds, fine, tool }: Rounded, step: Step): Length {
  if (tool === true) return value;
  const set = toMultiple(value, rounds ?? 'nearest', fine === true ? step.fine : step.usual);
  return sign(set) < 0 ? ZERO : set;
}

/** A size of a part: the same, but never nothing where there is something. */
export function settableSize(value: Length, facts: Rounded, step: Step): Length {
  const set = settableLength(value, facts, step);
  if (sign(set) > 0 || sign(value) <= 0) return set;
  return facts.fine === true ? step.fine : step.usual;
}
