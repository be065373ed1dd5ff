import type { Length } from '../length/length.ts';
import { printLength } from '../length/print-length.ts';
import { printReal, type Real } from '../length/real.ts';
import { type Fault, faultOf } from '../fields/fault.ts';
import type { FigureTable, NamedPart } from '../plan/figure.ts';
import { printedAsRead } from '../plan/printed-as-read.ts';
import type { Note, SettingValue } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';
import type { faultWords } from '../words/faults.ts';
import type { WordKey } from '../words/say.ts';

type Key = keyof typeof faultWords;
type FaultId = Key extends infer K ? (K extends `fault.${infer Id}` ? Id : never) : never;
type NoteId = Key extends infer K ? (K extends `note.${infer Id}` ? Id : never) : never;
/** A figure of a fault or note before it is printed: a length, one that has left the fractions, a count, a part's name, words by their key. */
export type Found =
  | Length
  | Real
  | string
  | number
  | { readonly part: NamedPart }
  | { readonly words: WordKey; readonly figures?: FoundTable };
interface FoundTable {
  readonly [name: string]: Found;
}

/** Gathers what is found wrong or doubtful about one door. Paths are fields of the door in the job file. */
export class Findings {
  /** Whatever keeps the door from being made. */
  readonly faults: Fault[] = [];
  /** Warnings and advice. */
  readonly notes: Note[] = [];
  readonly #path: string;
  readonly #units: Units;

  constructor(path: string, units: Units) {
    this.#path = path;
    this.#units = units;
  }

  /** The path of a field. */
  at(field: string): string {
    return `${this.#path}.${field}`;
  }

  /** Takes over what was found elsewhere about the same door. */
  join({ faults, notes }: Findings): void {
    this.faults.push(...faults);
    this.notes.push(...notes);
  }

  /** Something that keeps the door from being made, at a field of the job file. */
  fault(id: FaultId, field: string, figures: FoundTable = {}): void {
    const read = (value: SettingValue) => printedAsRead(value, this.#units);
    this.faults.push(faultOf(this.at(field), id, tableOf(figures, read)));
  }

  /** Something that can be made but is likely to go wrong. */
  warn(id: NoteId, field: string, figures: FoundTable = {}): void {
    this.#note('warning', id, field, figures);
  }

  /** Something that is usually done otherwise. */
  advise(id: NoteId, field: string, figures: FoundTable = {}): void {
    this.#note('advice', id, field, figures);
  }

  #note(level: Note['level'], id: NoteId, field: string, figures: FoundTable): void {
    this.notes.push({
      id,
      level,
      path: this.at(field),
      figures: tableOf(figures, (value) => value),
    });
  }
}

type Tell = (value: SettingValue) => SettingValue;

function tableOf(figures: FoundTable, tell: Tell): FigureTable {
  return Object.fromEntries(Object.entries(figures).map(([name, found]) => [name, figureOf(found, tell)]));
}

function figureOf(found: Found, tell: Tell): FigureTable[string] {
  if (typeof found === 'string') return found;
  if (typeof found === 'number') return tell(Number.isInteger(found) ? found : printReal(found as Real));
  if ('part' in found) return found;
  if (!('words' in found)) return tell(printLength(found));
  const { words, figures } = found;
  return { words, ...(figures === undefined ? {} : { figures: tableOf(figures, tell) }) };
}
