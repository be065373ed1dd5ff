import type { Length } from '../length/length.ts';
import { printLength } from '../length/print-length.ts';
import { printReal, type Real } from '../length/real.ts';
import { showValue, shownText } from '../length/reading.ts';
import { typeLength } from '../length/type-length.ts';
import type { Fault } from '../fields/fault.ts';
import type { Note, SettingValue } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';
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
  readonly #units: Units;

  constructor(path: string, units: Units) {
    this.#path = path;
    this.#units = units;
  }

  /** Something that keeps the door from being made, at a field of the job file. */
  fault(id: FaultId, field: string, figures: Readonly<Record<string, Figure>> = {}): void {
    this.faults.push({
      path: `${this.#path}.${field}`,
      code: id,
      message: say(`fault.${id}`, told(figures, this.#units)),
      figures: printed(figures),
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
    this.notes.push({
      id,
      level,
      path: `${this.#path}.${field}`,
      message: say(`note.${id}`, told(figures, this.#units)),
      figures: printed(figures),
    });
  }
}

/** As they stand in the sentence: what has left the fractions as near as a tape reads. */
function told(figures: Readonly<Record<string, Figure>>, units: Units): Record<string, SettingValue> {
  const tell = (figure: Figure): SettingValue => {
    if (typeof figure === 'object') return typeLength(figure, units);
    const exact = print(figure);
    return typeof figure === 'number' ? shownText(showValue(exact, units)) : exact;
  };
  return Object.fromEntries(Object.entries(figures).map(([name, figure]) => [name, tell(figure)]));
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
