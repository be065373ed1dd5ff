import { expect, test } from 'vitest';
import { cups } from '#main/printing/cups.ts';
import type { JobEnd } from '#main/printing/job-state.ts';
import type { Ran, Run } from '#main/printing/program.ts';

const ended = (stdout: string, code = 0, stderr = ''): Ran => ({ kind: 'ended', code, stdout, stderr });

/** CUPS as it answers in these tests: what `lpstat` and `lp` say, in order, the last one for ever. */
function spoken(says: {
  printers?: readonly string[];
  accepting?: string;
  lp?: Ran;
  queue?: readonly string[];
  completed?: string;
}): { run: Run; asked: { program: string; args: readonly string[]; input: number }[] } {
  const asked: { program: string; args: readonly string[]; input: number }[] = [];
  const printers = [...(says.printers ?? ['printer Labels is idle.  enabled since Wed\n'])];
  const queue = [...(says.queue ?? [''])];
  const next = (list: string[]) => (list.length > 1 ? list.shift() : list[0]) ?? '';
  const run: Run = async (program, args, input) => {
    asked.push({ program, args, input: input?.length ?? 0 });
    if (program === 'lp') return says.lp ?? ended('request id is Labels-7 (0 file(s))\n');
    if (program === 'cancel') return ended('');
    if (args.includes('-p')) return ended(next(printers));
    if (args.includes('-a')) return ended(says.accepting ?? 'Labels accepting requests since Wed\n');
    return ended(args.includes('not-completed') ? next(queue) : (says.completed ?? ''));
  };
  return { run, asked };
}

const pdf = new Uint8Array([37, 80, 68, 70]);
const paper = { pdf, title: 'Stickers\nfor the boot room', media: 'letter' as const };
const waiting = (status: string, alerts: string) =>
  `Labels-7 root 1 Wed\n\tStatus: ${status}\n\tAlerts: ${alerts}\n`;
const print = (
  spokenCups: { run: Run },
  how: { printer?: string; end?: JobEnd; signal?: AbortSignal; complaining?: number } = {},
) =>
  cups({
    run: spokenCups.run,
    end: async () => how.end ?? 'completed',
    pace: 1,
    patience: { complaining: how.complaining ?? 1000, inAll: 2000 },
  }).print(how.printer ?? 'Labels', paper, how.signal ?? new AbortController().signal);

test('a paper goes to lp on its standard input, at 100 %, with the printer’s name as an argument of its own', async () => {
  const there = spoken({ queue: [waiting('', 'job-printing'), ''] });
  expect(await print(there)).toEqual({ ok: true });
  expect(there.asked.find(({ program }) => program === 'lp')).toEqual({
    program: 'lp',
    args: [
      '-d',
      'Labels',
      '-t',
      'Stickers for the boot room',
      '-o',
      'print-scaling=none',
      '-o',
      'media=Letter',
      '-',
    ],
    input: 4,
  });
});

test('a name that is not in the list never reaches lp', async () => {
  const there = spoken({});
  expect(await print(there, { printer: 'Labels; rm -rf /' })).toMatchObject({
    code: 'printer-unknown',
    figures: { printers: 'Labels' },
  });
  expect(there.asked.some(({ program }) => program === 'lp')).toBe(false);
});

test('a stopped printer and one that takes no jobs are told before anything is sent', async () => {
  const stopped = spoken({ printers: ['printer Labels disabled since Wed -\n\tout of labels\n'] });
  expect(await print(stopped)).toMatchObject({
    code: 'printer-stopped',
    figures: { reason: 'out of labels' },
  });
  const refuses = spoken({ accepting: 'Labels not accepting requests since Wed -\n\tkept\n' });
  expect(await print(refuses)).toMatchObject({ code: 'printer-refuses', figures: { reason: 'kept' } });
  expect([...stopped.asked, ...refuses.asked].some(({ program }) => program === 'lp')).toBe(false);
});

test('a printer that stops under way is told, and the job is taken out of its queue', async () => {
  const there = spoken({
    queue: [waiting('', 'job-printing'), waiting('The cable is out.', 'printer-stopped')],
  });
  expect(await print(there)).toMatchObject({
    code: 'printer-stopped',
    figures: { reason: 'The cable is out.' },
  });
  expect(there.asked.at(-1)).toMatchObject({ program: 'cancel', args: ['Labels-7'] });
});

test('a printer that only complains is given up after a while', async () => {
  const there = spoken({ queue: [waiting('The printer is not responding.', 'job-printing')] });
  expect(await print(there, { complaining: 20 })).toMatchObject({
    code: 'printer-silent',
    figures: { reason: 'The printer is not responding.' },
  });
  expect(there.asked.at(-1)?.program).toBe('cancel');
});

test.each<[JobEnd, string, object]>([
  ['aborted', 'The cable is out.', { ok: false, code: 'printer-fault' }],
  ['cancelled', '', { ok: false, code: 'cancelled' }],
  ['completed', 'Ready.', { ok: true }],
])('a job that left the queue %s is taken for what it is', async (end, status, outcome) => {
  const there = spoken({ completed: waiting(status, 'processing-to-stop-point') });
  expect(await print(there, { end })).toMatchObject(outcome);
});

test('where nobody can say how a job ended, only one without complaints counts as printed', async () => {
  const options = (status: string) => spoken({ completed: waiting(status, 'processing-to-stop-point') });
  const unsure = (there: { run: Run }) =>
    cups({ run: there.run, end: async () => null, pace: 1 }).print(
      'Labels',
      paper,
      new AbortController().signal,
    );
  expect(await unsure(options(''))).toEqual({ ok: true });
  expect(await unsure(options('The cable is out.'))).toMatchObject({ code: 'printer-fault' });
  expect(await unsure(spoken({ completed: '' }))).toMatchObject({ code: 'printer-fault' });
});

test('a print that is taken back leaves the queue', async () => {
  const stop = new AbortController();
  const there = spoken({ queue: [waiting('', 'job-printing')] });
  const printing = print(there, { signal: stop.signal });
  setTimeout(() => stop.abort(), 20);
  expect(await printing).toMatchObject({ code: 'cancelled' });
  expect(there.asked.at(-1)).toMatchObject({ program: 'cancel', args: ['Labels-7'] });
});

test('without CUPS, or with its service down, the list says so', async () => {
  const missing: Run = async () => ({ kind: 'missing' });
  expect(await cups({ run: missing }).list()).toMatchObject({ code: 'printing-missing' });
  const asleep: Run = async () => ended('', 1, 'lpstat: Scheduler is not running.');
  expect(await cups({ run: asleep }).list()).toMatchObject({ code: 'printing-asleep' });
});
