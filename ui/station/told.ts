import type { StationId } from '#core/joint/names.ts';
import type { Located } from '#core/marks/live-plan.ts';
import { partName, stageName, stationName } from '#core/words/names.ts';
import { say } from '#core/words/say.ts';
import type { Message } from './shown.ts';
import type { Here } from './where.ts';

/** The names that a sentence about a part's stage needs. */
export function namesOf(
  { part, door }: Located,
  stage: string,
): { part: string; door: string; stage: string } {
  return { part: partName(part.part), door: door.door, stage: stageName(stage) };
}

/** A sentence of one line that leaves the screen as it is. */
export function banner(code: string, text: string): Message {
  return { code, text, next: '', banner: true };
}

/** A sentence over the whole screen, and what to do next. */
export function sheet(code: string, text: string, next = ''): Message {
  return { code, text, next, banner: false };
}

/** Why there is no setup for a scanned part here, and where it goes. */
export function whyNot(here: Exclude<Here, { kind: 'setup' }>, station: StationId): Message {
  if (here.kind === 'spoiled')
    return sheet(
      'spoiled',
      say('message.spoiled'),
      say('message.spoiled.next', { replacedBy: here.replacedBy }),
    );
  if (here.kind === 'finished') return sheet('finished', say('message.finished'));
  const figures = {
    here: stationName(station),
    station: stationName(here.next.station),
    stage: stageName(here.next.stage),
    missing: here.kind === 'stage-not-reached' ? listed(here.missing.map(missingName)) : '',
  };
  return sheet(here.kind, say(`message.${here.kind}`, figures), say(`message.${here.kind}.next`, figures));
}

/** The first few of a list, and how many more there are. */
function listed(names: readonly string[]): string {
  const SHOWN = 4;
  const more = names.length - SHOWN;
  return `${names.slice(0, SHOWN).join(', ')}${more > 0 ? ` ${say('message.more', { count: more })}` : ''}`;
}

/** "rail-top: tenon" as people say it. */
function missingName(missing: string): string {
  const [part, stage] = missing.split(': ');
  return stage === undefined ? stageName(missing) : `${partName(part ?? '')} (${stageName(stage)})`;
}
