import { connect } from 'node:net';
import { expect, onTestFinished, test } from 'vitest';
import { milled, SMALL_JOB } from '../store/small-shop.ts';
import { type LiveHub, liveHub } from './live-hub.ts';

const REASON = 'x'.repeat(200);

/** Marks that show on the wire as some 600 bytes each. */
async function flow({ hub }: LiveHub, codes: readonly string[], count: number): Promise<void> {
  for (let left = count; left > 0; left -= 500)
    await Promise.all(
      Array.from({ length: Math.min(500, left) }, (_, k) =>
        hub.store.mark(milled(codes[k % codes.length] ?? '', { mark: 'proved', reason: REASON })),
      ),
    );
}

/** A reader of the events that reads nothing until it is told to; then it gives the ids it got, and whether it was cut off. */
function reader({ hub }: LiveHub, lastId: number) {
  const port = Number(new URL(hub.url).port);
  const socket = connect(port, '127.0.0.1');
  socket.on('error', () => undefined);
  socket.pause();
  onTestFinished(() => void socket.destroy());
  socket.write(`GET /api/events HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nLast-Event-ID: ${lastId}\r\n\r\n`);
  return async (until: number) => {
    let text = '';
    let closed = false;
    const ids = () => [...text.matchAll(/\nid: (\d+)\n(?=[^]*?\n\n)/g)].map(([, id]) => Number(id));
    socket.on('data', (bytes) => (text += bytes.toString('latin1')));
    socket.on('close', () => (closed = true));
    socket.resume();
    await expect
      .poll(() => closed || text.includes(`id: ${until}\n`), { interval: 20, timeout: 10_000 })
      .toBe(true);
    return { ids: ids(), closed };
  };
}

test.each([
  ['that is told as things happen', false],
  ['that is still being told of older marks', true],
])(
  'a reader %s and never reads is dropped, comes back, and misses nothing',
  async (_what, older) => {
    const live = await liveHub();
    const saved = await live.ask('POST', '/jobs', SMALL_JOB);
    const codes = (saved.body.parts as { code: string }[]).map(({ code }) => code);
    if (older) await flow(live, codes, 14_000);
    const begun = older ? 0 : live.hub.store.lastSeq;
    const readOn = reader(live, begun);
    await new Promise((later) => setTimeout(later, 300));
    await flow(live, codes, older ? 4000 : 18_000);
    const last = live.hub.store.lastSeq;
    const first = await readOn(last);
    expect(first.closed).toBe(true);
    const got = first.ids.at(-1) ?? begun;
    expect(got).toBeLessThan(last);
    const second = await reader(live, got)(last);
    expect(second.closed).toBe(false);
    const all = [...first.ids, ...second.ids];
    expect(all).toEqual(Array.from({ length: all.length }, (_, k) => (all[0] ?? 0) + k));
    expect(all.at(-1)).toBe(last);
  },
  40_000,
);
