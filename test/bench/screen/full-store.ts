import { closeSync, openSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import type { StationId } from '#core/stages/stations.ts';
import type { PlanDoor } from '#core/plan/plan.ts';
import { disk } from '#main/store/files/disk.ts';
import { LOG_FORMAT, type LogEntry } from '#main/store/log/log-entry.ts';
import { writeLine } from '#main/store/log/log-line.ts';
import { planDocument } from '#main/store/documents/plan-document.ts';
import type { StoredJob } from '#main/store/documents/stored-job.ts';
import { Store } from '#main/store/store.ts';

const AT = '2026-11-25T08:00:00.000Z';

/** A job that was finished long ago: three hundred doors of five parts. */
function oldJob(k: number): unknown {
  return {
    format: 1,
    job: `Old job ${k + 1}`,
    units: 'in',
    doors: [{ mark: 'D', quantity: 300, opening: { width: String(12 + (k % 9)), height: '30' } }],
  };
}

/**
 * Fills a folder as a hub would have: jobs of so many parts in all, every stage of them done, and one current job, of
 * which every part is done up to a stage. Returns how many parts and marks there are, and the current job’s doors.
 */
export async function fullStore(
  folder: string,
  version: string,
  parts: number,
  current: unknown,
  until: string,
): Promise<{ parts: number; marks: number; doors: readonly PlanDoor[] }> {
  const store = await Store.open({ port: disk, folder, version });
  const saved = await store.jobs.add(current, () => false);
  if (saved.kind !== 'saved') throw new Error('the current job was not taken');
  const planOf = ({ document }: StoredJob) => {
    const planned = planDocument(document);
    if (!planned.ok) throw new Error('a job here has no faults');
    return planned.value;
  };
  const plan = planOf(saved.stored);
  const count = () => store.jobs.all().reduce((sum, { summary }) => sum + summary.parts, 0);
  for (let k = 0; count() < parts; k += 1) await store.jobs.add(oldJob(k), () => false);
  const plans = store.jobs.all().map(planOf);
  const total = count();
  await store.close();

  const file = openSync(join(folder, 'log.jsonl'), 'w');
  const first: LogEntry = { kind: 'format', format: LOG_FORMAT, version, at: AT };
  let lines = [writeLine(1, first)];
  let marks = 0;
  const done = (job: string, door: string, part: string, code: string, station: StationId, stage: string) => {
    const id = `00000000-0000-4000-8000-${marks.toString(16).padStart(12, '0')}`;
    const mark = { id, code, station, stage, mark: 'done', by: 'Ada', at: AT } as const;
    const entry: LogEntry = { kind: 'mark', mark: { received: AT, job, door, part, mark } };
    lines.push(writeLine(marks + 2, entry));
    marks += 1;
    if (lines.length < 10_000) return;
    writeSync(file, lines.join(''));
    lines = [];
  };
  for (const { id, doors } of plans)
    for (const { door, parts: blanks, stages } of doors) {
      for (const { part, code, stages: own } of blanks) {
        const last = id === plan.id ? own.findIndex(({ stage }) => stage === until) : own.length;
        for (const { stage, station } of own.slice(0, Math.max(0, last)))
          done(id, door, part, code, station, stage);
      }
      const [blank] = blanks;
      if (id !== plan.id && blank !== undefined)
        for (const { stage, station } of stages) done(id, door, blank.part, blank.code, station, stage);
    }
  writeSync(file, lines.join(''));
  closeSync(file);
  return { parts: total, marks, doors: plan.doors };
}
