import type { DoorSpec } from '../job/job.ts';
import type { Length } from '../length/length.ts';

/** Sizes as they came out, in place of those ordered: of the frame's stock, of a member, of the groove. */
export interface AsCut {
  readonly thickness?: Length;
  readonly grooveWidth?: Length;
}

/** What was measured on one part; a width only makes sense here. */
export interface PartAsCut extends AsCut {
  readonly width?: Length;
}

/**
 * What was measured on one door and on its parts, in the job’s units. One door of several alike can have its own opening
 * here, and a survey of it, and stays that door with its codes.
 */
export interface DoorAsCut extends AsCut, Pick<DoorSpec, 'survey'> {
  readonly opening?: Partial<DoorSpec['opening']>;
  /** By part: "stile-left", "rail-top" … */
  readonly parts: Readonly<Record<string, PartAsCut>>;
}

/** What was measured for a job, its doors ("A-1") and their parts; the nearest one counts. */
export interface Measured extends AsCut {
  readonly doors: Readonly<Record<string, DoorAsCut>>;
}

/** Every size as ordered. */
export const NOTHING_MEASURED: Measured = { doors: {} };
