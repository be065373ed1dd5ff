import { z } from 'zod';
import { hasWords } from '#core/words/say.ts';
import { problem } from './problem.ts';

/** What came in, read by its schema; 400 with the first thing that is wrong. */
export function checked<S extends z.ZodType>(schema: S, input: unknown): z.infer<S> {
  const read = schema.safeParse(input);
  if (read.success) return read.data;
  const issue = read.error.issues[0];
  const where = issue === undefined || issue.path.length === 0 ? '' : `${issue.path.join('.')}: `;
  // What the schemas' own library says of an issue comes as it is; what our schemas say is a key.
  const said = issue?.message ?? '';
  const reason = hasWords(said)
    ? ({ words: 'api.at', figures: { where, what: { words: said } } } as const)
    : `${where}${said}`.slice(0, 300);
  throw problem(400, 'api.body', { reason }, { code: 'malformed' });
}
