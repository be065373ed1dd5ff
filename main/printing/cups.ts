import { setTimeout as pause } from 'node:timers/promises';
import { jobEnd } from './job-state.ts';
import { type Paper, type Printers, type PrintSystem, refused, type Refused } from './printer.ts';
import { type Ran, type Run, runHere } from './program.ts';
import { readAccepting, readJobs, readPrinters } from './read-lpstat.ts';

export interface CupsOptions {
  readonly run?: Run;
  readonly end?: typeof jobEnd;
  /** How often the queue is asked, in milliseconds. */
  readonly pace?: number;
  /** How long a printer may complain, and how long a job may wait in all, in milliseconds. */
  readonly patience?: { readonly complaining: number; readonly inAll: number };
}

const PATIENCE = { complaining: 30_000, inAll: 45 * 60_000 };

/** Printing through CUPS: `lpstat` lists, `lp` takes the PDF on standard input, and `lpstat` says what became of it. */
export function cups(options: CupsOptions = {}): PrintSystem {
  const { run = runHere(), end = jobEnd, pace = 500, patience = PATIENCE } = options;

  async function list(): Promise<Printers> {
    const [printers, accepting] = await Promise.all([run('lpstat', ['-l', '-p']), run('lpstat', ['-a'])]);
    if (printers.kind === 'missing') return refused('printing-missing');
    if (asleep(printers)) return refused('printing-asleep');
    const takes = readAccepting(accepting.kind === 'ended' ? accepting.stdout : '');
    return {
      ok: true,
      printers: readPrinters(printers.stdout).map((printer) => {
        const { accepting: takesJobs = false, reason = printer.reason } = takes.get(printer.name) ?? {};
        return { ...printer, accepting: takesJobs, ...(reason === undefined ? {} : { reason }) };
      }),
    };
  }

  async function print(
    name: string,
    paper: Paper,
    signal: AbortSignal,
  ): Promise<{ readonly ok: true } | Refused> {
    const listed = await list();
    if (!listed.ok) return listed;
    const printer = listed.printers.find((each) => each.name === name);
    if (printer === undefined)
      return refused('printer-unknown', {
        printer: name.slice(0, 60),
        printers: listed.printers.map((each) => each.name).join(', ') || '–',
      });
    const reason = printer.reason ?? '–';
    if (!printer.accepting) return refused('printer-refuses', { printer: printer.name, reason });
    if (printer.state === 'stopped') return refused('printer-stopped', { printer: printer.name, reason });
    if (signal.aborted) return refused('cancelled');
    const title = paper.title.replace(/[\p{Cc}\p{Cf}]/gu, ' ').slice(0, 120);
    const sent = await run(
      'lp',
      [
        ...['-d', printer.name, '-t', title, '-o', 'print-scaling=none'],
        ...(paper.media === undefined ? [] : ['-o', `media=${paper.media === 'a4' ? 'A4' : 'Letter'}`]),
        '-',
      ],
      paper.pdf,
    );
    if (sent.kind === 'missing') return refused('printing-missing');
    const job = /request id is (\S+-(\d+)) /.exec(sent.stdout);
    if (sent.code !== 0 || job?.[1] === undefined || job[2] === undefined)
      return refused('printer-fault', { printer: printer.name, reason: firstLine(sent) });
    return follow(printer.name, { id: job[1], number: Number(job[2]), title }, signal);
  }

  /** Waits until the job has left its queue; one that cannot leave it is taken back, so that it does not print unseen later. */
  async function follow(
    printer: string,
    job: { readonly id: string; readonly number: number; readonly title: string },
    signal: AbortSignal,
  ): Promise<{ readonly ok: true } | Refused> {
    const takeBack = async (why: Refused) => {
      await run('cancel', [job.id]);
      return why;
    };
    const began = Date.now();
    let quietSince = began;
    let last = '';
    for (;;) {
      if (signal.aborted) return takeBack(refused('cancelled'));
      const asked = await run('lpstat', ['-l', '-W', 'not-completed', '-o', printer]);
      if (asked.kind === 'missing') return refused('printing-missing');
      if (asked.code !== 0 && asleep(asked)) return refused('printing-asleep');
      if (asked.code !== 0) return refused('printer-fault', { printer, reason: firstLine(asked) });
      const waiting = readJobs(asked.stdout).find(({ id }) => id === job.id);
      if (waiting === undefined) break;
      const { alerts, status } = waiting;
      if (/printer-stopped|job-hold|job-stopped/.test(alerts))
        return takeBack(refused('printer-stopped', { printer, reason: status || alerts }));
      if (status === '' || status !== last) quietSince = Date.now();
      last = status;
      const listed = await list();
      const now = listed.ok ? listed.printers.find((each) => each.name === printer) : undefined;
      if (now?.state === 'stopped')
        return takeBack(refused('printer-stopped', { printer, reason: now.reason ?? (status || '–') }));
      const seconds = (from: number) => Math.round((Date.now() - from) / 1000);
      if (Date.now() - quietSince > patience.complaining || Date.now() - began > patience.inAll)
        return takeBack(
          refused('printer-silent', { printer, seconds: seconds(began), reason: status || '–' }),
        );
      await pause(pace);
    }
    return ended(printer, job);
  }

  async function ended(
    printer: string,
    job: { readonly id: string; readonly number: number; readonly title: string },
  ): Promise<{ readonly ok: true } | Refused> {
    const done = await run('lpstat', ['-l', '-W', 'completed', '-o', printer]);
    const entry = done.kind === 'ended' ? readJobs(done.stdout).find(({ id }) => id === job.id) : undefined;
    const reason = entry?.status || '–';
    switch (await end({ printer, id: job.number, title: job.title })) {
      case 'completed':
        return { ok: true };
      case 'aborted':
        return refused('printer-fault', { printer, reason });
      case 'cancelled':
        return refused('cancelled');
      case 'waiting':
        return refused('printer-fault', { printer, reason });
      case null:
        // Nobody can say how it ended: only a job that its printer had nothing to say about counts as printed.
        return entry !== undefined && entry.status === ''
          ? { ok: true }
          : refused('printer-fault', { printer, reason });
    }
  }

  return { list, print };
}

function asleep(ran: Ran): boolean {
  return (
    ran.kind === 'ended' && /scheduler is not running|unable to connect|connection refused/i.test(ran.stderr)
  );
}

function firstLine(ran: Ran & { kind: 'ended' }): string {
  return (ran.stderr.trim().split('\n')[0] ?? '').replace(/^\w+: (Error - )?/, '') || `exit ${ran.code}`;
}
