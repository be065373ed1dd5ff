import { type CupsQueue, followJob } from './cups-job.ts';
import { cupsPrinters, printerFor } from './cups-printers.ts';
import { saidWrong } from './cups-trouble.ts';
import { jobEnd } from './job-state.ts';
import { type Paper, type Printed, type PrintSystem, refused } from './printer.ts';
import { runHere } from './program.ts';

const PATIENCE = { complaining: 30_000, inAll: 45 * 60_000 };

/** Printing through CUPS: `lpstat` lists, `lp` takes the PDF on standard input, and `lpstat` says what became of it. */
export function cups(options: Partial<CupsQueue> = {}): PrintSystem {
  const queue = { run: runHere(), end: jobEnd, pace: 500, patience: PATIENCE, ...options };
  return {
    list: () => cupsPrinters(queue.run),
    async print(name, paper, signal) {
      const printer = await printerFor(queue.run, name);
      if (typeof printer !== 'string') return printer;
      if (signal.aborted) return refused('cancelled');
      return sendPaper(queue, printer, paper, signal);
    },
  };
}

async function sendPaper(
  queue: CupsQueue,
  printer: string,
  paper: Paper,
  signal: AbortSignal,
): Promise<Printed> {
  const title = paper.title.replace(/[\p{Cc}\p{Cf}]/gu, ' ').slice(0, 120);
  const sent = await queue.run('lp', lpArguments(printer, title, paper), paper.pdf);
  if (sent.kind === 'missing') return refused('printing-missing');
  const [, id, number] = /request id is (\S+-(\d+)) /.exec(sent.stdout) ?? [];
  if (sent.code !== 0 || id === undefined)
    return refused('printer-fault', { printer, reason: saidWrong(sent) });
  return followJob(queue, printer, { id, number: Number(number), title }, signal);
}

function lpArguments(printer: string, title: string, { media }: Paper): string[] {
  const sheet = media === undefined ? [] : ['-o', `media=${media === 'a4' ? 'A4' : 'Letter'}`];
  return ['-d', printer, '-t', title, '-o', 'print-scaling=none', ...sheet, '-'];
}
