import { isTree } from '#core/fields/read-shape.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { Allowed, Place, PlanDoor, PlanStage, Settings, SettingValue, Why } from '#core/plan/plan.ts';
import { spokenNow } from '#core/words/say.ts';
import { ask } from '../hub/client.ts';
import type { LiveJob } from '../hub/live.svelte.ts';

/** Which number is asked about: of a part's stage, or of one of its places. */
export interface Asked {
  readonly mark: string;
  readonly part: string;
  readonly stage: string;
  readonly name: string;
  readonly value: SettingValue;
  readonly at?: string | undefined;
}

const explained = new Map<string, Promise<PlanDoor | null>>();

/** Why a number is what it is, and how exact it must be where that is known. */
export interface Reason extends Why {
  readonly allow?: Allowed | undefined;
}

/**
 * Where a number is measured from, how it was reckoned and how exact it must be. Reckoned here from the job file, so that it
 * answers at once and while the hub is away; only when that gives another number (the shop's tools, or sizes as they were
 * cut) is the hub asked, for this door alone.
 */
export async function reasonFor(job: LiveJob, door: string, asked: Asked): Promise<Reason | null> {
  const here = reasonIn(doorOf(job.file, asked.mark), asked);
  if (here !== null) return here;
  const key = `${job.line.id} ${job.line.revision} ${door} ${spokenNow()}`;
  const known =
    explained.get(key) ??
    ask('GET /jobs/:id/doors/:door', { params: { id: job.line.id, door }, query: { why: '1' } }).then(
      (answer) => (answer.kind === 'ok' ? answer.value : null),
    );
  explained.set(key, known);
  const found = await known;
  if (found === null) explained.delete(key);
  return reasonIn(found, asked);
}

/** The reason that a door gives for just this value; null when it gives another value or none. */
export function reasonIn(
  door: Pick<PlanDoor, 'parts' | 'stages'> | null,
  { part, stage, name, value, at }: Asked,
): Reason | null {
  const stages: readonly PlanStage[] = [
    ...(door?.parts.find((each) => each.part === part)?.stages ?? []),
    ...(door?.stages ?? []),
  ];
  const found = stages.find((each) => each.stage === stage);
  const places: readonly Place[] = found?.places ?? [];
  const spot = at === undefined ? found : places.find((each) => each.at === at);
  if (spot === undefined) return null;
  const settings: Settings = spot.settings;
  const why = spot.why?.[name];
  return settings[name] === value && why !== undefined ? { ...why, allow: spot.allow?.[name] } : null;
}

/** The first door of a mark, with reasons. */
function doorOf(file: unknown, mark: string): PlanDoor | null {
  if (!isTree(file) || !Array.isArray(file.doors)) return null;
  const doors = file.doors.filter((door) => isTree(door) && door.mark === mark);
  const planned = planFile(
    { ...file, doors: doors.map((door: object) => ({ ...door, quantity: 1 })) },
    { why: spokenNow() },
  );
  return planned.ok ? (planned.value.doors[0] ?? null) : null;
}
