import { z } from 'zod';

/** What a list of jobs shows, and the codes of its first blanks: all that is needed of a job before it is opened. */
export const jobSummary = z.object({
  id: z.string(),
  /** Of the document as it lies on disk: a summary of another text is worth nothing. */
  hash: z.string(),
  job: z.string(),
  due: z.string().optional(),
  units: z.enum(['in', 'mm']),
  doors: z.number(),
  doorNames: z.array(z.string()),
  parts: z.number(),
  codes: z.array(z.string()),
});
export const jobLines = z.array(jobSummary);
export type JobSummary = Readonly<z.infer<typeof jobSummary>>;
