import type { Length } from '../length/length.ts';
import { printLength } from '../length/print-length.ts';
import { printReal, type Real } from '../length/real.ts';
import type { Fault, Note, SettingValue } from '../plan/plan.ts';
import type { faultWords } from '../words/faults.ts';
import { say } from '../words/say.ts';

type Key = keyof typeof faultWords;
type FaultId = Key extends infer K ? (K extends `fault.${infer Id}` ? Id : never) : never;
type NoteId = Key extends infer K ? (K extends `note.${infer Id}` ? Id : never) : never;
/** A figure of a fault or note before it is printed: a length, one that has left the fractions, a count, or words. */
export type Figure = Length | Real | string | number;

/** Gathers what is found wrong or doubtful about one door. Paths are fields of the door in the job file. */
export class Findings {
  /** Whatever keeps the door from being made. */
  readonly faults: Fault[] = [];
  /** Warnings and advice. */
  readonly notes: Note[] = [];
  readonly #path: string;

  constructor(path: string) {
    this.#path = path;
  }

  /** Something that keeps the door from being made, at a field of the job file. */
  fault(id: FaultId, field: string, figures: Readonly<Record<string, Figure>> = {}): void {
    const shown = printed(figures);
    this.faults.push({
      path: `${this.#path}.${field}`,
      code: id,
      message: say(`fault.${id}`, shown),
      figures: shown,
    });
  }

  /** Something that can be made but is likely to go wrong. */
  warn(id: NoteId, field: string, figures: Readonly<Record<string, Figure>> = {}): void {
    this.#note('warning', id, field, figures);
  }

  /** Something that is usually done otherwise. */
  advise(id: NoteId, field: string, figures: Readonly<Record<string, Figure>> = {}): void {
    this.#note('advice', id, field, figures);
  }

  #note(level: Note['level'], id: NoteId, field: string, figures: Readonly<Record<string, Figure>>): void {
    const shown = printed(figures);
    this.notes.push({
      id,
      level,
      path: `${this.#path}.${field}`,
      message: say(`note.${id}`, shown),
      figures: shown,
    });
  }
}

function printed(figures: Readonly<Record<string, Figure>>): Record<string, SettingValue> {
  return Object.fromEntries(Object.entries(figures).map(([name, figure]) => [name, print(figure)]));
}

function print(figure: Figure): SettingValue {
  if (typeof figure === 'string') return figure;
  return typeof figure === 'number'
    ? Number.isInteger(figure)
      ? figure
      : printReal(figure as Real)
    : printLength(figure);
}
