import type { StationSeen } from '#core/api/stations-api.ts';
import { isDoorStage } from '#core/stages/stage-id.ts';
import { partName } from '#core/telling/names.ts';
import { shownSince } from '#core/words/day.ts';
import { say } from '#core/words/say.ts';
import { badgeName } from '../people/person.svelte.ts';

/** The part, or the door as a whole, whose set-up is on the screen: "Left stile of BENCH-1"; nothing where there is none. */
export function workOf({ door, part, stage }: StationSeen): string {
  if (door === undefined || part === undefined) return '';
  return stage !== undefined && isDoorStage(stage)
    ? say('board.whole-door', { door })
    : say('board.part-of', { part: partName(part), door });
}

/** What the device is called at which the station is shown. */
export function deviceOf({ device }: StationSeen): string {
  return device ?? say('seen.at-hub');
}

/** Who works there; nothing where nobody has signed on. */
export function whoAt({ by }: StationSeen): string {
  return by === undefined ? '' : badgeName(by);
}

/** Is somebody there, and with what, or since when is nobody: in a few words. */
export function standOf(seen: StationSeen): string {
  if (!seen.here) return say('seen.away', { since: shownSince(seen.since) });
  const told = [whoAt(seen), workOf(seen)].filter((each) => each !== '');
  return told.length === 0 ? say('seen.here') : told.join(', ');
}
