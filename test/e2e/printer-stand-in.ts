import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Printing programs that keep what they are given: "Labels" prints, "Jam" takes a job and never lets it go. */
export interface PrinterStandIn {
  /** What a hub has to be started with to find them before any others. */
  readonly env: Readonly<Record<string, string>>;
  /** What a printer was given and has not been told to forget, the oldest first. */
  taken(printer: string): Uint8Array[];
  /** How many jobs a printer was told to forget. */
  cancelled(printer: string): number;
  remove(): void;
}

const LP = `#!/bin/sh
while [ $# -gt 1 ]; do
  if [ "$1" = -d ]; then printer=$2; fi
  shift
done
number=$(($(ls "$SPOOL" | wc -l) + 1))
cat > "$SPOOL/$printer-$number.pdf"
echo "request id is $printer-$number (1 file(s))"
`;

const LPSTAT = `#!/bin/sh
jobs() {
  for file in "$SPOOL/$1"-*.pdf; do
    if [ -e "$file" ]; then printf '%s root 1024 Wed Nov 25 21:42:57 2026\\n\\tAlerts: %s\\n' "$(basename "$file" .pdf)" "$2"; fi
  done
}
case "$*" in
  '-l -p') for name in Labels Jam; do printf 'printer %s is idle.  enabled since Wed Nov 25 21:42:44 2026\\n' $name; done ;;
  -a) for name in Labels Jam; do printf '%s accepting requests since Wed Nov 25 21:42:44 2026\\n' $name; done ;;
  '-l -W not-completed -o Jam') jobs Jam printer-stopped ;;
  '-l -W completed -o Labels') jobs Labels job-completed-successfully ;;
esac
`;

const CANCEL = `#!/bin/sh
mv "$SPOOL/$1.pdf" "$SPOOL/$1.cancelled"
`;

/** Puts the programs in a folder of their own; the words they speak are those of CUPS. */
export function printerStandIn(): PrinterStandIn {
  const programs = mkdtempSync(join(tmpdir(), 'shoulderline-lp-'));
  const spool = mkdtempSync(join(tmpdir(), 'shoulderline-spool-'));
  for (const [name, text] of Object.entries({ lp: LP, lpstat: LPSTAT, cancel: CANCEL }))
    writeFileSync(join(programs, name), text, { mode: 0o755 });
  const kept = (printer: string, ending: string) =>
    readdirSync(spool)
      .filter((name) => name.startsWith(`${printer}-`) && name.endsWith(ending))
      .toSorted((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  return {
    env: {
      PATH: `${programs}:${process.env.PATH ?? ''}`,
      SPOOL: spool,
      // No scheduler is asked how a job ended.
      CUPS_SERVER: join(programs, 'no-scheduler'),
    },
    taken: (printer) => kept(printer, '.pdf').map((name) => new Uint8Array(readFileSync(join(spool, name)))),
    cancelled: (printer) => kept(printer, '.cancelled').length,
    remove() {
      for (const folder of [programs, spool]) rmSync(folder, { recursive: true, force: true });
    },
  };
}
