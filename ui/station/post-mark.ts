import type { StationId } from '#core/stages/stations.ts';
import { judgeMark } from '#core/marks/judge-mark.ts';
import type { Mark } from '#core/marks/mark.ts';
import { say } from '#core/words/say.ts';
import { tellRefusal } from '#core/telling/tell-refusal.ts';
import { live } from '../hub/live.svelte.ts';
import type { Posted } from '../hub/outbox.svelte.ts';
import { person } from '../people/person.svelte.ts';

/** A new mark of this station, by whoever works here. */
export function newMark(station: StationId, code: string, stage: string, mark: Mark['mark']): Mark {
  const by = person.badge === null ? {} : { by: person.badge };
  return { id: crypto.randomUUID(), code, station, stage, mark, ...by, at: new Date().toISOString() };
}

/** Sends a mark, or keeps it; while the hub is away it is judged here. Null when the part is not known any more. */
export async function postMark(mark: Mark): Promise<Posted | null> {
  const known = live.find(mark.code);
  if (known === null) return null;
  if (live.away) {
    const judged = judgeMark(known.found, known.job.progress, mark);
    if (!judged.ok) {
      const { code, stage } = mark;
      const message = tellRefusal(judged.code, { ...judged.figures, missing: judged.missing, code, stage });
      return { kind: 'refused', code: judged.code, message };
    }
  }
  const { door, part } = known.found;
  const kept = { mark, job: known.job.line.id, door: door.door, part: part.part };
  return live.outbox
    .post(kept)
    .catch(() => ({ kind: 'refused', code: 'not-kept', message: say('message.not-kept') }) as const);
}
