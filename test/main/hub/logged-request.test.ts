import pino from 'pino';
import { expect, test } from 'vitest';
import { liveHub, rawStatus } from './live-hub.ts';

test('of what somebody asks for little is written down, however much it is', async () => {
  let log = '';
  const logger = pino({ level: 'info' }, { write: (line: string) => void (log += line) });
  const live = await liveHub({ logger });
  log = '';
  expect(await rawStatus(live.hub.url, `/api/health?${'a'.repeat(100_000)}`)).toBe(200);
  expect(await rawStatus(live.hub.url, '/api/health', { host: 'b'.repeat(100_000) })).toBe(421);
  expect(log).toContain('/api/health?aaa');
  expect(log.length).toBeLessThan(3000);
});
