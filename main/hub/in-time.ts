import type { Readable } from 'node:stream';
import { problem } from './problem.ts';

/** How long a body may stand still. */
const IDLE_MS = 30_000;

/** A body's pieces as they come, held to a pace: one that stands still for so long is given up (408). */
export async function* inTime(body: Readable, idleMs = IDLE_MS): AsyncGenerator<Buffer> {
  const pieces = body.iterator({ destroyOnReturn: false }) as AsyncIterator<Buffer>;
  for (;;) {
    const piece = await withinTime(pieces.next(), idleMs);
    if (piece.done === true) return;
    yield piece.value;
  }
}

async function withinTime<T>(asked: Promise<T>, ms: number): Promise<T> {
  // Given up, it still ends some day, and nobody is told then.
  asked.catch(() => undefined);
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, failed) => {
    timer = setTimeout(() => failed(problem(408, 'api.body-late', { seconds: Math.ceil(ms / 1000) })), ms);
  });
  try {
    return await Promise.race([asked, late]);
  } finally {
    clearTimeout(timer);
  }
}
