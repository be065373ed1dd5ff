import type { Units } from '#core/length/units.ts';

/** What a list of jobs shows of a job. */
export interface JobSummary {
  readonly id: string;
  /** Of the document as it lies on disk. */
  readonly hash: string;
  readonly job: string;
  readonly due?: string;
  readonly units: Units;
  readonly doors: number;
  readonly parts: number;
}
