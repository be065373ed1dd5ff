import type { FastifyReply } from 'fastify';

/** Aborts once whoever asked is gone, or has its answer. On HTTP/2 what stands for the answer never says so; its stream does. */
export function whenGone({ raw }: FastifyReply): AbortSignal {
  const gone = new AbortController();
  if ('stream' in raw ? isOver(raw.stream) : raw.destroyed) gone.abort();
  else raw.once('close', () => gone.abort());
  return gone.signal;
}

function isOver(stream: unknown): boolean {
  return typeof stream === 'object' && stream !== null && 'destroyed' in stream && stream.destroyed === true;
}
