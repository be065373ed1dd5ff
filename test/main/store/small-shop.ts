import { unpackedPlan } from '#main/store/documents/kept-plan.ts';
import type { StoredJob } from '#main/store/documents/stored-job.ts';
import { Store } from '#main/store/store.ts';
import { disk } from '#main/store/files/disk.ts';
import type { FilePort } from '#main/store/files/file-port.ts';
import type { Mark } from '#core/marks/mark.ts';
import type { Plan } from '#core/plan/plan.ts';

export const SMALL_JOB = {
  format: 1,
  id: 'boot-room',
  job: 'Millbrook boot room',
  units: 'in',
  doors: [{ mark: 'LOCKER', quantity: 2, opening: { width: '16', height: '30' } }],
};

export function openStore(folder: string, port: FilePort = disk, version = 'test'): Promise<Store> {
  return Store.open({ port, folder, version });
}

/** A store with the small job in it. */
export async function smallShop(folder: string, port: FilePort = disk): Promise<Store> {
  const store = await openStore(folder, port);
  const saved = await store.jobs.add(SMALL_JOB, (id) => store.seen(id));
  if (saved.kind !== 'saved') throw new Error(saved.kind);
  return store;
}

/** Every part of a job in its plan's order, with its code. */
export function partsOf(
  store: Store,
): { readonly door: string; readonly part: string; readonly code: string }[] {
  return store.jobs
    .all()
    .flatMap((stored) => planOf(stored).doors)
    .flatMap(({ door, parts }) => parts.map(({ part, code }) => ({ door, part, code })));
}

/** The plan that a small job has, from what is kept of it. */
export function planOf(stored: StoredJob | undefined): Plan {
  const plan = unpackedPlan(stored?.document.id ?? '', stored?.lines ?? new Uint8Array());
  if (plan === null) throw new Error('a small job has its lines in memory');
  return plan;
}

let count = 0;
/** A mark of its own id: this part is milled, or what else is said. */
export function milled(code: string, more: Partial<Mark> = {}): Mark {
  count += 1;
  return {
    id: `00000000-0000-4000-8000-${count.toString(16).padStart(12, '0')}`,
    code,
    station: 'milling',
    stage: 'mill',
    mark: 'done',
    at: '2026-11-25T08:00:00.000Z',
    ...more,
  };
}
