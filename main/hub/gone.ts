import type { FastifyReply } from 'fastify';

/** Aborts once whoever asked is gone, or has its answer. */
export function whenGone({ raw }: FastifyReply): AbortSignal {
  const gone = new AbortController();
  if (raw.destroyed) gone.abort();
  else raw.once('close', () => gone.abort());
  return gone.signal;
}
