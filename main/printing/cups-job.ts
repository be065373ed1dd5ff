import { setTimeout as pause } from 'node:timers/promises';
import { cupsPrinters } from './cups-printers.ts';
import { isAsleep, saidWrong } from './cups-trouble.ts';
import type { jobEnd } from './job-state.ts';
import { type Printed, refused, type Refused } from './printer.ts';
import type { Run } from './program.ts';
import { type QueuedJob, readJobs } from './read-lpstat.ts';

/** How the queue of CUPS is asked. */
export interface CupsQueue {
  readonly run: Run;
  readonly end: typeof jobEnd;
  /** How often the queue is asked, in milliseconds. */
  readonly pace: number;
  /** How long a printer may complain, and how long a job may wait in all, in milliseconds. */
  readonly patience: { readonly complaining: number; readonly inAll: number };
}

/** A job as `lp` named it. */
export interface SentJob {
  readonly id: string;
  readonly number: number;
  readonly title: string;
}

/** Waits until the job has left its queue; one that cannot leave it is taken back, so that it does not print unseen later. */
export async function followJob(
  queue: CupsQueue,
  printer: string,
  job: SentJob,
  signal: AbortSignal,
): Promise<Printed> {
  const waited = new Waited();
  for (;;) {
    if (signal.aborted) return takeBack(queue.run, job, refused('cancelled'));
    const waiting = await waitingJob(queue.run, printer, job);
    if (waiting === null) return howEnded(queue, printer, job);
    if ('ok' in waiting) return waiting;
    waited.hear(waiting.status);
    const stuck =
      stoppedJob(printer, waiting) ??
      (await stoppedPrinter(queue.run, printer, waiting)) ??
      waited.tooLong(queue.patience, printer, waiting);
    if (stuck !== null) return takeBack(queue.run, job, stuck);
    await pause(queue.pace);
  }
}

async function takeBack(run: Run, job: SentJob, why: Refused): Promise<Refused> {
  await run('cancel', [job.id]);
  return why;
}

/** The job as it waits; null once it has left the queue. */
async function waitingJob(run: Run, printer: string, job: SentJob): Promise<QueuedJob | Refused | null> {
  const asked = await run('lpstat', ['-l', '-W', 'not-completed', '-o', printer]);
  if (asked.kind === 'missing') return refused('printing-missing');
  if (asked.code !== 0 && isAsleep(asked)) return refused('printing-asleep');
  if (asked.code !== 0) return refused('printer-fault', { printer, reason: saidWrong(asked) });
  return readJobs(asked.stdout).find(({ id }) => id === job.id) ?? null;
}

function stoppedJob(printer: string, { alerts, status }: QueuedJob): Refused | null {
  return /printer-stopped|job-hold|job-stopped/.test(alerts)
    ? refused('printer-stopped', { printer, reason: status || alerts })
    : null;
}

async function stoppedPrinter(run: Run, printer: string, { status }: QueuedJob): Promise<Refused | null> {
  const listed = await cupsPrinters(run);
  const now = listed.ok ? listed.printers.find((each) => each.name === printer) : undefined;
  return now?.state === 'stopped'
    ? refused('printer-stopped', { printer, reason: now.reason ?? (status || '–') })
    : null;
}

/** How long a job has waited, and since when its printer has said the same of it. */
class Waited {
  readonly #began = Date.now();
  #sameSince = this.#began;
  #last = '';

  hear(status: string): void {
    if (status === '' || status !== this.#last) this.#sameSince = Date.now();
    this.#last = status;
  }

  tooLong(
    { complaining, inAll }: CupsQueue['patience'],
    printer: string,
    { status }: QueuedJob,
  ): Refused | null {
    const now = Date.now();
    if (now - this.#sameSince <= complaining && now - this.#began <= inAll) return null;
    const seconds = Math.round((now - this.#began) / 1000);
    return refused('printer-silent', { printer, seconds, reason: status || '–' });
  }
}

/** Asks the scheduler what became of a job that has left its queue. */
async function howEnded({ run, end }: CupsQueue, printer: string, job: SentJob): Promise<Printed> {
  const done = await run('lpstat', ['-l', '-W', 'completed', '-o', printer]);
  const entry = done.kind === 'ended' ? readJobs(done.stdout).find(({ id }) => id === job.id) : undefined;
  const fault = refused('printer-fault', { printer, reason: entry?.status || '–' });
  switch (await end({ printer, id: job.number, title: job.title })) {
    case 'completed':
      return { ok: true };
    case 'cancelled':
      return refused('cancelled');
    case 'aborted':
    case 'waiting':
      return fault;
    case null:
      // Nobody can say how it ended: only a job that its printer had nothing to say about counts as printed.
      return entry?.status === '' ? { ok: true } : fault;
  }
}
