import type { Disagreement } from '#core/measured/disagreements.ts';
import { say } from '#core/words/say.ts';

/** One change of a setting, and every door whose part was cut by what it was. */
export interface CutChange {
  readonly key: string;
  readonly doors: readonly string[];
  /** How many settings it stands for: one a part of each door. */
  readonly count: number;
  /** Left out where it is the whole door. */
  readonly part?: string;
  readonly stage: string;
  /** Left out where the plan has no such stage any more: then nothing is to be set. */
  readonly setting?: Pick<Disagreement, 'place' | 'name' | 'was' | 'now'>;
}

const MOST_DOORS = 8;

/** The names of doors; of many the first, and how many more there are. */
export function doorsNamed(doors: readonly string[]): string {
  const named = doors.slice(0, MOST_DOORS).join(', ');
  const rest = doors.length - MOST_DOORS;
  return rest > 0 ? say('cut.doors-more', { doors: named, count: rest }) : named;
}

/** What was cut otherwise, the same change of several doors told once; a stage that is no more once, not by its settings. */
export function cutChanges(all: readonly Disagreement[]): CutChange[] {
  const found = new Map<string, CutChange>();
  for (const { door, part, stage, place, name, was, now } of all) {
    const gone = now === undefined;
    const key = JSON.stringify(gone ? [part, stage] : [part, stage, place, name, was, now]);
    const same = found.get(key);
    found.set(key, {
      key,
      doors: [...new Set([...(same?.doors ?? []), door])],
      count: (same?.count ?? 0) + 1,
      ...(part === undefined ? {} : { part }),
      stage,
      ...(gone ? {} : { setting: { name, was, now, ...(place === undefined ? {} : { place }) } }),
    });
  }
  return [...found.values()];
}
