import type { Plan } from '#core/plan/plan.ts';
import type { PrintedDoor, PrintedPlan } from '#core/plan/printed-plan.ts';
import { ask } from './client.ts';

/** Up to so many doors a plan is asked for whole: that is little, and asked for once. */
const WHOLE = 200;
/** With more doors that differ than this a plan is asked for whole all the same. */
const MOST_ASKED = 1000;
/** So many are asked for at once. */
const TOGETHER = 6;

/** One door of each tag, by the plan that was put together from them. */
const known = new WeakMap<Plan, ReadonlyMap<string, PrintedDoor>>();

/**
 * The plan of a job of so many doors; null where the hub gave none. Of a large one the hub is asked which doors are alike,
 * and for one of each kind that the plan of before has not: after a save that is little, whatever the size of the job.
 */
export async function planByDoor(
  id: string,
  doors: number,
  before: Plan | null,
): Promise<PrintedPlan | null> {
  if (doors <= WHOLE) return whole(id);
  // A job that was saved meanwhile is listed anew: its doors would be of two plans.
  for (let tries = 0; tries < 3; tries += 1) {
    const listed = await ask('GET /jobs/:id/doors', { params: { id } });
    if (listed.kind !== 'ok') return null;
    const held = before === null ? undefined : known.get(before);
    const first = new Map(listed.value.doors.toReversed().map(({ tag, door }) => [tag, door]));
    const missing = [...first].filter(([tag]) => held?.has(tag) !== true);
    if (missing.length > MOST_ASKED) return whole(id);
    const kinds = new Map([...first.keys()].flatMap((tag) => pairOf(tag, held?.get(tag))));
    const came = await fetched(id, missing);
    if (came === null) continue;
    for (const [tag, door] of came) kinds.set(tag, door);
    const again = await ask('GET /jobs/:id/doors', { params: { id } });
    if (again.kind !== 'ok') return null;
    const tags = (of: typeof listed.value) => of.doors.map(({ door, tag }) => `${door} ${tag}`).join();
    if (missing.length > 0 && tags(again.value) !== tags(listed.value)) continue;
    const { format, job, units } = again.value;
    const plan: PrintedPlan = {
      format,
      id,
      job,
      units,
      doors: again.value.doors.flatMap(({ door, tag, codes }) => {
        const alike = kinds.get(tag);
        return alike === undefined ? [] : [named(alike, door, codes)];
      }),
    };
    known.set(plan, kinds);
    return plan;
  }
  return whole(id);
}

async function whole(id: string): Promise<PrintedPlan | null> {
  const answer = await ask('GET /jobs/:id', { params: { id } });
  return answer.kind === 'ok' ? answer.value : null;
}

function pairOf<T>(tag: string, door: T | undefined): [string, T][] {
  return door === undefined ? [] : [[tag, door]];
}

/** One door of each tag; null as soon as one does not come. */
async function fetched(
  id: string,
  wanted: readonly (readonly [string, string])[],
): Promise<Map<string, PrintedDoor> | null> {
  const came = new Map<string, PrintedDoor>();
  for (let at = 0; at < wanted.length; at += TOGETHER) {
    const answers = await Promise.all(
      wanted.slice(at, at + TOGETHER).map(async ([tag, door]) => {
        const answer = await ask('GET /jobs/:id/doors/:door', { params: { id, door } });
        return answer.kind === 'ok' ? ([tag, answer.value] as const) : null;
      }),
    );
    for (const answer of answers) {
      if (answer === null) return null;
      came.set(...answer);
    }
  }
  return came;
}

/** A door like another, of its own name and codes; it shares the rest. */
function named(alike: PrintedDoor, door: string, codes: readonly string[]): PrintedDoor {
  return { ...alike, door, parts: alike.parts.map((part, k) => ({ ...part, code: codes[k] ?? part.code })) };
}
