import { isTree } from '#core/fields/read-shape.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { Place, Plan, PlanStage, Settings, SettingValue, Why } from '#core/plan/plan.ts';
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

const explained = new Map<string, Promise<Plan | null>>();

/**
 * Where a number is measured from and how it was reckoned. Reckoned here from the job file, so that it answers at once
 * and while the hub is away; only when that gives another number (the shop's tools, or sizes as they were cut) is the hub asked.
 */
export async function reasonFor(job: LiveJob, asked: Asked): Promise<Why | null> {
  const here = reasonIn(planOf(job.file, asked.mark), asked);
  if (here !== null) return here;
  const key = `${job.line.id} ${job.line.revision} ${spokenNow()}`;
  const known =
    explained.get(key) ??
    ask('GET /jobs/:id', { params: { id: job.line.id }, query: { why: '1' } }).then((answer) =>
      answer.kind === 'ok' ? answer.value : null,
    );
  explained.set(key, known);
  const plan = await known;
  if (plan === null) explained.delete(key);
  return reasonIn(plan, asked);
}

/** The reason that a plan gives for just this value; null when it gives another value or none. */
export function reasonIn(plan: Plan | null, { mark, part, stage, name, value, at }: Asked): Why | null {
  const door = plan?.doors.find((each) => each.mark === mark);
  const stages: readonly PlanStage[] = [
    ...(door?.parts.find((each) => each.part === part)?.stages ?? []),
    ...(door?.stages ?? []),
  ];
  const found = stages.find((each) => each.stage === stage);
  const places: readonly Place[] = found?.places ?? [];
  const spot = at === undefined ? found : places.find((each) => each.at === at);
  if (spot === undefined) return null;
  const settings: Settings = spot.settings;
  return settings[name] === value ? (spot.why?.[name] ?? null) : null;
}

/** The plan of one mark's first door, with reasons. */
function planOf(file: unknown, mark: string): Plan | null {
  if (!isTree(file) || !Array.isArray(file.doors)) return null;
  const doors = file.doors.filter((door) => isTree(door) && door.mark === mark);
  const planned = planFile(
    { ...file, doors: doors.map((door: object) => ({ ...door, quantity: 1 })) },
    { why: spokenNow() },
  );
  return planned.ok ? planned.value : null;
}
