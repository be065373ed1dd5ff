import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import type { ShellLine, ShellMessage } from './shell-line.ts';
import { type Printed, type PrintSystem, refused, unknownPrinter } from './printer.ts';

const answer = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('printers'),
    ask: z.number(),
    printers: z.array(z.object({ name: z.string(), description: z.string() })),
  }),
  z.object({ kind: z.literal('print-ended'), ask: z.number(), ok: z.boolean(), reason: z.string() }),
]);
type Answer = z.infer<typeof answer>;

/** Printing through the shell's silent print: the shell is told a file and a printer of its own list, and says how it ended. */
export function shellPrinting(shell: ShellLine, patience = 120_000): PrintSystem {
  const waiting = new Map<number, (answer: Answer) => void>();
  let asked = 0;
  shell.hear((message) => {
    const read = answer.safeParse(message);
    if (read.success) waiting.get(read.data.ask)?.(read.data);
  });

  function ask(message: (ask: number) => ShellMessage, signal?: AbortSignal): Promise<Answer | null> {
    const number = (asked += 1);
    return new Promise((told) => {
      const end = (given: Answer | null) => {
        clearTimeout(timer);
        waiting.delete(number);
        told(given);
      };
      const timer = setTimeout(() => end(null), patience);
      signal?.addEventListener('abort', () => end(null), { once: true });
      waiting.set(number, end);
      shell.tell(message(number));
    });
  }

  async function list(): ReturnType<PrintSystem['list']> {
    const told = await ask((number) => ({ kind: 'list-printers', ask: number }));
    if (told?.kind !== 'printers') return refused('printing-asleep');
    return {
      ok: true,
      printers: told.printers.map(({ name, description }) => ({
        name,
        ...(description === '' || description === name ? {} : { description }),
        accepting: true,
        state: 'idle',
      })),
    };
  }

  async function print(
    printer: string,
    paper: { readonly pdf: Uint8Array },
    signal: AbortSignal,
  ): Promise<Printed> {
    const stopped = () => signal.aborted;
    const listed = await list();
    if (!listed.ok) return listed;
    if (!listed.printers.some(({ name }) => name === printer))
      return unknownPrinter(printer, listed.printers);
    if (stopped()) return refused('cancelled');
    const folder = await mkdtemp(join(tmpdir(), 'shoulderline-print-'));
    try {
      const path = join(folder, 'paper.pdf');
      await writeFile(path, paper.pdf, { mode: 0o600 });
      const told = await ask((number) => ({ kind: 'print', ask: number, printer, path }), signal);
      if (stopped()) return refused('cancelled');
      if (told?.kind !== 'print-ended')
        return refused('printer-silent', { printer, seconds: Math.round(patience / 1000), reason: '–' });
      return told.ok ? { ok: true } : refused('printer-fault', { printer, reason: told.reason || '–' });
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  }

  return { list, print };
}
