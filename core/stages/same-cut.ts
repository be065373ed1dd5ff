import type { StageId } from './stage-id.ts';

/** Cuts that a shop makes in one way or in another: the one stage, and those that together come to the same. */
interface SameCut {
  readonly one: StageId;
  readonly all: readonly StageId[];
}

/**
 * The bead behind the outer rails goes by one rip or by two notches. A groove that was ploughed is no slot: an arched
 * rail that was square before loses it with its arch.
 */
const SAME_CUTS: readonly SameCut[] = [{ one: 'strip', all: ['notch-bottom', 'notch-top'] }];

/** The stages of the other way that a stage is made by, or is a part of; null for one that is made in one way only. */
export function otherWay(stage: string): readonly StageId[] | null {
  for (const { one, all } of SAME_CUTS) {
    if (stage === one) return all;
    if (all.some((each) => each === stage)) return [one];
  }
  return null;
}

/** What was done, by its stages, with those of the other way that come to the same. */
export function withOtherWay<T>(done: Readonly<Record<string, T>>): Readonly<Record<string, T>> {
  const added: [StageId, T][] = [];
  for (const { one, all } of SAME_CUTS) {
    const whole = Object.hasOwn(done, one) ? done[one] : undefined;
    if (whole !== undefined) added.push(...all.map((each): [StageId, T] => [each, whole]));
    const last = all.at(-1);
    const by = last === undefined ? undefined : done[last];
    if (by !== undefined && all.every((each) => Object.hasOwn(done, each))) added.push([one, by]);
  }
  return added.length === 0 ? done : { ...Object.fromEntries(added), ...done };
}
