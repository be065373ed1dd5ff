import type { WordKey } from '../words/say.ts';

/** The key of steps whose lines are numbered from 1: how a cut is made. */
export type StepsKey = { [K in WordKey]: K extends `how.${infer F}.1` ? `how.${F}` : never }[WordKey];

/** Steps told one after the other. */
export type Steps = readonly StepsKey[];

/**
 * How a kind of stage is done: as usual, or by what it is done on where that is otherwise. A stile has its cuts by the
 * end or the mid rail that its stage's id names.
 */
export interface StepTable {
  readonly usual: Steps;
  readonly stile?: Steps;
  /** A rail between the outer ones, with two sight edges. */
  readonly mid?: Steps;
  /** A rail that is arched. */
  readonly arched?: Steps;
  readonly panel?: Steps;
  readonly archedPanel?: Steps;
  /** At the stile's own end, where the same at a mid rail is done otherwise. */
  readonly atEnd?: Steps;
  /** At the lower and at the upper edge of a mid rail. */
  readonly lower?: Steps;
  readonly upper?: Steps;
  /** Where the stage lacks a setting that the usual steps hang on. */
  readonly lacking?: { readonly setting: string; readonly steps: Steps };
  /** Besides, last of all: where its `pareTo` says how thick the piece may be at most. */
  readonly pareTo?: Steps;
  /** Besides: where the tenon is wider than one should be. */
  readonly wide?: Steps;
}
