import { readCode } from '#core/codes/read-code.ts';
import { isDoorStage } from '#core/stages/stage-id.ts';
import { type StationId } from '#core/stages/stations.ts';
import type { Missing } from '#core/marks/stage-state.ts';
import type { PlanStage } from '#core/plan/plan.ts';
import type { Located } from '#core/marks/live-plan.ts';
import { missingName } from '#core/telling/missing.ts';
import { partName, stageName, stationInSentence } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import type { Message } from './setup-shown.ts';
import type { Here } from './here-at.ts';

/** What a sentence about a stage is of: the part with its door, or for a door's own stage the door. */
export function whatOf({ part, door }: Located, stage?: string): string {
  const names = { part: partName(part.part), door: door.door };
  return say(stage !== undefined && isDoorStage(stage) ? 'ui.whole-door' : 'ui.part-of', names);
}

/** What a sentence about a part's stage needs: of what, and which stage. */
export function namesOf(found: Located, stage: string): { what: string; stage: string } {
  return { what: whatOf(found, stage), stage: stageName(stage) };
}

/** A sentence of one line that leaves the screen as it is. */
export function banner(code: string, text: string): Message {
  return { code, text, next: '', banner: true };
}

/** A sentence over the whole screen, and what to do next. */
export function sheet(code: string, text: string, next = ''): Message {
  return { code, text, next, banner: false };
}

/** What is wrong with a text that was typed as a code or a badge; null where it is one. */
export function wrongTyped(text: string): string | null {
  const { kind } = readCode(text);
  if (kind === 'bad-check') return say('typed.bad-check');
  if (kind === 'malformed') return say(/^P-/i.test(text.trim()) ? 'typed.badge' : 'typed.malformed');
  return null;
}

/** That a text is no code of ours; or, where it may be the rest of one, that only a part of it came. */
export function noCode(text: string): Message {
  const bare = text.trim();
  const half = /^[0-9A-Z]{1,9}$/i.test(bare) && /[A-Z]/i.test(bare);
  return banner('malformed', say(half ? 'message.half' : 'message.malformed', { text: bare.slice(0, 20) }));
}

/** Why there is no setup for a scanned part here, and where it goes. */
export function whyNot(here: Exclude<Here, { kind: 'setup' }>, station: StationId, found: Located): Message {
  const what = whatOf(found);
  if (here.kind === 'spoiled')
    return sheet(
      'spoiled',
      say('message.spoiled', { what }),
      say('message.spoiled.next', { replacedBy: here.replacedBy }),
    );
  if (here.kind === 'finished') return sheet('finished', say('message.finished', { door: found.door.door }));
  const figures = {
    what,
    here: stationInSentence(station),
    station: stationInSentence(here.next.station),
    stage: stageName(here.next.stage),
    missing: here.kind === 'stage-not-reached' ? missingAt(here.missing, found) : '',
  };
  return sheet(here.kind, say(`message.${here.kind}`, figures), say(`message.${here.kind}.next`, figures));
}

/** The first few stages that are missing, each with where it is done, and how many more there are. */
function missingAt(missing: readonly Missing[], found: Located): string {
  const SHOWN = 4;
  const at = new Map<string, string[]>();
  for (const each of missing.slice(0, SHOWN)) {
    const station = stationOf(each, found);
    at.set(station, [...(at.get(station) ?? []), missingName(each)]);
  }
  const more = missing.length - SHOWN;
  const told = [...at].map(([station, names]) =>
    say('message.missing-at', { names: names.join(', '), station: stationInSentence(station) }),
  );
  return `${told.join('; ')}${more > 0 ? ` ${say('message.more', { count: more })}` : ''}`;
}

/** The station of a missing stage: of another part that part's, else the scanned part's own or its door's. */
function stationOf({ part: name, stage: missing }: Missing, { part, door }: Located): string {
  const stages: readonly PlanStage[] =
    name === undefined
      ? [...part.stages, ...door.stages]
      : (door.parts.find((each) => each.part === name)?.stages ?? []);
  return stages.find(({ stage }) => stage === missing)?.station ?? '';
}
