import type { PrinterLine } from '#core/api/prints-api.ts';
import type { FigureTable } from '#core/plan/figure.ts';
import type { WordKey } from '#core/words/say.ts';

/** Why a paper was not printed: a stable code with words under `print.`, and its figures. */
export type PrintRefusal =
  | 'printing-missing'
  | 'printing-asleep'
  | 'printer-unknown'
  | 'printer-refuses'
  | 'printer-stopped'
  | 'printer-fault'
  | 'printer-silent'
  | 'not-made'
  | 'cancelled';

export interface Refused {
  readonly ok: false;
  readonly code: PrintRefusal;
  readonly figures: FigureTable;
}

/** A refusal with its figures. */
export function refused(code: PrintRefusal, figures: FigureTable = {}): Refused {
  return { ok: false, code, figures };
}

/** A printer of this name is not among those that are known. */
export function unknownPrinter(name: string, known: readonly PrinterLine[]): Refused {
  const printers = known.map((each) => each.name).join(', ') || '–';
  return refused('printer-unknown', { printer: name.slice(0, 60), printers });
}

/** The key of a refusal's words. */
export function wordsOf(code: PrintRefusal): Extract<WordKey, `print.${string}`> {
  return `print.${code}`;
}

/** What became of a paper: it left the printer, or why it will not. */
export type Printed = { readonly ok: true } | Refused;

export type Printers = { readonly ok: true; readonly printers: readonly PrinterLine[] } | Refused;

/** What is handed to a printer: a PDF in true size, and what it is called in the printer's queue. */
export interface Paper {
  readonly pdf: Uint8Array;
  readonly title: string;
  /** The sheet it is on, where that has a name; a roll is the printer's own. */
  readonly media?: 'letter' | 'a4';
  /** How many stickers it carries: a part may take two. */
  readonly stickers?: number;
}

/** Whatever brings papers to printers here: CUPS, or the shell's silent print. */
export interface PrintSystem {
  list(): Promise<Printers>;
  /** Comes back when the paper has left the printer, or when it will not. An abort takes it out of the queue. */
  print(printer: string, paper: Paper, signal: AbortSignal): Promise<Printed>;
}
