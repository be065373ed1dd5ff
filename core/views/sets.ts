import type { Units } from '../length/units.ts';
import { leftToPare } from '../plan/left-to-pare.ts';
import { paredAt } from '../settable/pared-at.ts';
import type { Step } from '../settable/step.ts';

/** What a machine is set to, and where the line is that is reached by hand from there: null where it is set to the line. Printed lengths. */
export interface SetTo {
  readonly at: string;
  readonly line: string | null;
}

/** What is set for a setting of a plan, by its name and its printed value, which is where the line is; at another stage of the part where one is named. */
export type Sets = (name: string, line: string, stage?: string) => SetTo;

/** What a stage sets its machine to: to the step of a screen where one is given, else exactly. */
export function setsOf(own: string, units: Units, step?: Step): Sets {
  return (name, line, stage = own) => {
    const pared =
      step === undefined ? leftToPare(stage, name, line, units) : paredAt(stage, name, line, step);
    return pared === null ? { at: line, line: null } : { at: pared.set, line };
  };
}

/**
 * Where a finished line is drawn beside what is set, so that the two are told apart: at least so far from it. What is set
 * stands in the drawing’s scale, and so does the line where it is farther off than that.
 */
export function ghostAt(set: number, line: number, least: number): number {
  const off = line - set;
  return set + Math.sign(off) * Math.max(Math.abs(off), least);
}
