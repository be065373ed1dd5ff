import { createHash } from 'node:crypto';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Language } from '#core/words/languages.ts';
import type { StoredJob } from '../store/documents/stored-job.ts';
import type { PlanSource } from '../work/plan-source.ts';

/** Everything that an answer out of a plan follows from. */
export interface TaggedBy {
  readonly stored: StoredJob;
  readonly replaced: PlanSource['replaced'];
  /** Of the program, which makes the plan. */
  readonly version: string;
  readonly language: Language;
  /** What of the plan it is. */
  readonly of: string;
}

/** The tag of an answer out of a plan (ETag, RFC 9110 section 8.8.3): another one whenever the answer may be another. */
export function planTag({ stored, replaced, version, language, of }: TaggedBy): string {
  const { document, summary } = stored;
  const from = [version, summary.hash, document.revision, language, of, Object.entries(replaced).sort()];
  const sum = createHash('sha256').update(JSON.stringify(from)).digest('base64url');
  return `"${document.revision}-${sum.slice(0, 22)}"`;
}

/** Puts the tag on the answer. True when the asker has that answer already: it is told so (304), and nothing has to be made. */
export function isKnown(request: FastifyRequest, reply: FastifyReply, tag: string): boolean {
  reply.header('etag', tag).header('cache-control', 'no-cache').header('vary', 'accept-language');
  const asked = request.headers['if-none-match'] ?? '';
  const known = asked.split(',').map((each) => each.trim().replace(/^W\//, ''));
  return known.includes(tag) || known.includes('*');
}
