import { setTimeout as pause } from 'node:timers/promises';
import pino from 'pino';
import { expect, test } from 'vitest';
import { liveHub } from './live-hub.ts';

test('a stream that has ended is no trouble in the log', async () => {
  let log = '';
  const logger = pino({ level: 'info' }, { write: (line: string) => void (log += line) });
  const live = await liveHub({ logger });
  const gone = new AbortController();
  const stream = await fetch(`${live.hub.url}/api/events`, { signal: gone.signal });
  expect(stream.status).toBe(200);
  gone.abort();
  await pause(700);
  expect(log).toContain('/api/events');
  expect(log.split('\n').filter((line) => /"level":[456]0/.test(line))).toEqual([]);
});
