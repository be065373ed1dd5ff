import type { z } from 'zod';
import { Problem } from './problem.ts';

/** What was sent, checked against its schema; 400 with the first thing that is wrong and where it stands. */
export function checked<S extends z.ZodType>(schema: S, input: unknown): z.infer<S> {
  const read = schema.safeParse(input);
  if (read.success) return read.data;
  const issue = read.error.issues[0];
  const where = issue === undefined || issue.path.length === 0 ? '' : `${issue.path.join('.')}: `;
  throw new Problem(
    400,
    'api.body',
    { reason: `${where}${issue?.message ?? 'wrong form'}` },
    { code: 'malformed' },
  );
}
