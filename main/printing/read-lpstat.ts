import type { PrinterLine } from '#core/api/prints-api.ts';

/** A printer as `lpstat -l -p` tells of it; whether it takes jobs is told by `lpstat -a`. */
export interface TellsOfPrinter extends Omit<PrinterLine, 'accepting'> {
  /** What the printer says is wrong with it, or what it is at. */
  readonly reason?: string;
}

/** Reads `lpstat -l -p`, as it speaks in the C locale. */
export function readPrinters(text: string): TellsOfPrinter[] {
  return blocks(text).flatMap(({ head, lines }) => {
    const told = /^printer (\S+) (is idle|now printing|disabled)/.exec(head);
    const name = told?.[1];
    if (name === undefined) return [];
    const first = lines[0] ?? '';
    const description = lines.map((line) => /^Description: (.+)$/.exec(line)?.[1]).find((each) => each);
    return [
      {
        name,
        state: told?.[2] === 'disabled' ? 'stopped' : told?.[2] === 'now printing' ? 'printing' : 'idle',
        ...(description === undefined || description === name ? {} : { description }),
        ...(first === '' || first === 'Form mounted:' || first === 'reason unknown' ? {} : { reason: first }),
      },
    ];
  });
}

/** Reads `lpstat -a`: which printers take jobs, and why the others do not. */
export function readAccepting(text: string): ReadonlyMap<string, { accepting: boolean; reason?: string }> {
  return new Map(
    blocks(text).flatMap(({ head, lines }) => {
      const told = /^(\S+) (not accepting|accepting) requests/.exec(head);
      if (told?.[1] === undefined) return [];
      const reason = lines[0];
      return [[told[1], { accepting: told[2] === 'accepting', ...(reason === undefined ? {} : { reason }) }]];
    }),
  );
}

/** A job that is still in the queue. */
export interface QueuedJob {
  readonly id: string;
  /** What its printer says about it. */
  readonly status: string;
  /** The job's reasons, as IPP names them: "job-printing", "printer-stopped" … */
  readonly alerts: string;
}

/** Reads `lpstat -l -o`: the jobs of a queue, first to last. */
export function readJobs(text: string): QueuedJob[] {
  return blocks(text).map(({ head, lines }) => {
    const field = (name: string) =>
      lines.find((line) => line.startsWith(`${name}:`))?.slice(name.length + 1) ?? '';
    return {
      id: head.split(/\s/)[0] ?? '',
      status: field('Status').trim(),
      alerts: field('Alerts').trim(),
    };
  });
}

/** Lines that begin at the margin, each with the indented ones under it. */
function blocks(text: string): { readonly head: string; readonly lines: readonly string[] }[] {
  const found: { head: string; lines: string[] }[] = [];
  for (const line of text.split('\n')) {
    if (line.trim() === '') continue;
    if (/^\s/.test(line)) found.at(-1)?.lines.push(line.trim());
    else found.push({ head: line, lines: [] });
  }
  return found;
}
