import type { Fault, PrintedFault } from '../fields/fault.ts';
import { type Language, spokenNow } from '../words/say.ts';
import { speakSaying } from './speak-saying.ts';

/** Faults in the words of a language. Their lengths are already as they are read. */
export function speakFaults(faults: readonly Fault[], language: Language = spokenNow()): PrintedFault[] {
  return faults.map((fault) => ({
    path: fault.path,
    code: fault.code,
    message: speakSaying(fault, language),
  }));
}
