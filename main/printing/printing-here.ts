import type { ShellLine } from './shell-line.ts';
import { cups } from './cups.ts';
import type { PrintSystem } from './printer.ts';
import { shellPrinting } from './shell-printing.ts';

/** What this machine prints with: CUPS where there is such a thing, on Windows the shell's silent print. */
export function printingHere(shell: ShellLine | null, platform: string = process.platform): PrintSystem {
  return platform === 'win32' && shell !== null ? shellPrinting(shell) : cups();
}
