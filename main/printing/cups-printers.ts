import { isAsleep } from './cups-trouble.ts';
import { type Printers, refused, type Refused, unknownPrinter } from './printer.ts';
import type { Run } from './program.ts';
import { readAccepting, readPrinters } from './read-lpstat.ts';

/** The printers that CUPS knows, and whether each takes jobs; refused where there is no CUPS or it sleeps. */
export async function cupsPrinters(run: Run): Promise<Printers> {
  const [printers, accepting] = await Promise.all([run('lpstat', ['-l', '-p']), run('lpstat', ['-a'])]);
  if (printers.kind === 'missing') return refused('printing-missing');
  if (isAsleep(printers)) return refused('printing-asleep');
  const takes = readAccepting(accepting.kind === 'ended' ? accepting.stdout : '');
  return {
    ok: true,
    printers: readPrinters(printers.stdout).map((printer) => {
      const { accepting: takesJobs = false, reason = printer.reason } = takes.get(printer.name) ?? {};
      return { ...printer, accepting: takesJobs, ...(reason === undefined ? {} : { reason }) };
    }),
  };
}

/** The name of a printer that takes jobs now, as CUPS has it; refused where it is unknown, takes none, or was stopped. */
export async function printerFor(run: Run, name: string): Promise<string | Refused> {
  const listed = await cupsPrinters(run);
  if (!listed.ok) return listed;
  const printer = listed.printers.find((each) => each.name === name);
  if (printer === undefined) return unknownPrinter(name, listed.printers);
  const told = { printer: printer.name, reason: printer.reason ?? '–' };
  if (!printer.accepting) return refused('printer-refuses', told);
  if (printer.state === 'stopped') return refused('printer-stopped', told);
  return printer.name;
}
