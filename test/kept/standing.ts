import { STATIONS, type StationId } from '#core/stages/stations.ts';
import { indexParts } from '#core/marks/live-plan.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import type { Plan } from '#core/plan/plan.ts';
import { waitingAt } from '#core/queue/waiting.ts';
import type { LiveHub } from '../main/hub/live-hub.ts';

/** What a folder's hub tells of all its jobs: all that a later version must tell just so. */
export interface Standing {
  readonly jobs: readonly Record<string, unknown>[];
  /** Without notes: a later version may have more to say of a door, but nothing else to cut. */
  readonly plans: readonly unknown[];
  readonly progress: readonly unknown[];
  readonly board: unknown;
  readonly queues: Readonly<Record<string, readonly string[]>>;
}

/** Asks a hub for every plan, what has been done, the board, and what waits at each station. */
export async function standingOf({ ask }: Pick<LiveHub, 'ask'>): Promise<Standing> {
  const get = async (path: string): Promise<Record<string, unknown>> => {
    const { status, body } = await ask('GET', path);
    if (status !== 200) throw new Error(`GET ${path}: ${status} ${JSON.stringify(body)}`);
    return body;
  };
  const jobs = (await get('/jobs')).jobs as Record<string, unknown>[];
  const opened = await Promise.all(
    jobs.map(async (line) => {
      const address = `/jobs/${encodeURIComponent(String(line.id))}`;
      const plan = (await get(address)) as unknown as Plan;
      const progress = (await get(`${address}/progress`)) as unknown as JobProgress;
      return { line, plan, index: indexParts(plan), progress };
    }),
  );
  const waiting = (station: StationId) =>
    waitingAt(station, opened).map(({ job, door, part, stage }) =>
      [job, door.door, part.part, part.code, stage.stage].join(' '),
    );
  return {
    jobs: jobs.map(({ id, job, due, units, doors, parts, left }) => ({
      id,
      job,
      due,
      units,
      doors,
      parts,
      left,
    })),
    plans: opened.map(({ plan }) => ({
      ...plan,
      doors: plan.doors.map(({ notes: _said, ...door }) => door),
    })),
    progress: opened.map(({ progress }) => progress),
    board: await get('/board'),
    queues: Object.fromEntries(STATIONS.map((station) => [station, waiting(station)])),
  };
}
