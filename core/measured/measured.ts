import type { DoorSpec } from '../job/job.ts';
import type { Length } from '../length/length.ts';

/** Sizes as they came out, in place of those ordered: of the frame's stock, of a member, of the groove. */
export interface AsCut {
  readonly thickness?: Length;
  readonly grooveWidth?: Length;
}

/** What is measured of the stock and the tools of a whole job. */
export const SIZE_NAMES = ['thickness', 'grooveWidth'] as const;
export type SizeName = (typeof SIZE_NAMES)[number];

/** What was ordered as one size, and came out as another. */
export interface SizeAsCut {
  readonly of: Length;
  readonly is: Length;
}

/** Of a whole job: one length where all its doors are ordered alike, or one for each size that is ordered. */
export type JobSize = { readonly all: Length } | { readonly each: readonly SizeAsCut[] };

/** What was measured on one part; length and width only make sense here. A panel's length is its height. */
export interface PartAsCut extends AsCut {
  readonly length?: Length;
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
export interface Measured extends Readonly<Partial<Record<SizeName, JobSize>>> {
  readonly doors: Readonly<Record<string, DoorAsCut>>;
}

/** Every size as ordered. */
export const NOTHING_MEASURED: Measured = { doors: {} };

/** What was measured of a part; nothing where it was not. */
export function partSizes(door: DoorAsCut | null | undefined, part: string): PartAsCut {
  return (Object.hasOwn(door?.parts ?? {}, part) ? door?.parts[part] : undefined) ?? {};
}
