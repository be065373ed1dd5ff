import { once } from 'node:events';
import { connect, createSecureServer } from 'node:http2';
import type { AddressInfo } from 'node:net';
import { PassThrough } from 'node:stream';
import { expect, onTestFinished, test } from 'vitest';
import type { AcceptedMark } from '#core/marks/mark.ts';
import { markEvent, Reader } from '#main/hub/reader.ts';
import { makeAuthority, makeLeaf } from '#main/network/certificates.ts';

const BEAT = 'event: beat\ndata: {}\n\n';

/** A mark of this number, as long as one is. */
function mark(seq: number): AcceptedMark {
  return {
    seq,
    received: '2026-11-30T08:00:00.000Z',
    job: 'quay',
    door: 'A-1',
    part: 'stile-left',
    mark: {
      id: `00000000-0000-4000-8000-${String(seq).padStart(12, '0')}`,
      code: 'NEP79HTWTB',
      station: 'milling',
      stage: 'mill',
      mark: 'done',
      at: '2026-11-30T08:00:00.000Z',
    },
  };
}

/** Begins a reader that missed the marks from one to another; meanwhile some come that are among those, and some that are not. */
async function begun(reader: Reader, missed: readonly [from: number, to: number], came: readonly number[]) {
  const [from, to] = missed;
  await reader.begin(
    BEAT,
    (function* () {
      for (let seq = from; seq <= to; seq += 1) {
        if (seq === to) for (const each of came) reader.send(markEvent(mark(each)));
        yield mark(seq);
      }
    })(),
  );
}

const numbers = (text: string) => [...text.matchAll(/^id: (\d+)$/gm)].map(([, seq]) => Number(seq));

test('a mark that comes while a reader is told what it missed is told once', async () => {
  const out = new PassThrough();
  const reader = new Reader(out);
  await begun(reader, [1, 5], [4, 5, 6]);
  reader.send(markEvent(mark(7)));
  reader.end();
  expect(numbers((await out.toArray()).join(''))).toEqual([1, 2, 3, 4, 5, 6, 7]);
});

test('over HTTP/2 what was missed arrives byte for byte where all that came meanwhile is among it', async () => {
  const authority = await makeAuthority('shop', Date.now());
  const leaf = await makeLeaf(authority, ['127.0.0.1'], Date.now());
  const server = createSecureServer({ key: leaf.key, cert: leaf.certificate });
  server.on('stream', (out) => {
    out.respond({ ':status': 200 });
    const reader = new Reader(out);
    void begun(reader, [1, 6], [2, 3, 4, 5, 6]).then(() => setTimeout(() => reader.end(), 20));
  });
  await new Promise<void>((listens) => server.listen(0, '127.0.0.1', listens));
  const { port } = server.address() as AddressInfo;
  const session = connect(`https://127.0.0.1:${port}`, { ca: authority.certificate });
  onTestFinished(() => {
    session.destroy();
    server.close();
  });
  const stream = session.request({ ':path': '/' }).setEncoding('utf8');
  let text = '';
  stream.on('data', (piece: string) => (text += piece));
  await once(stream, 'end');
  expect(text).toBe(BEAT + [1, 2, 3, 4, 5, 6].map((seq) => markEvent(mark(seq))).join(''));
});
