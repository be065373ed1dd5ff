import { randomUUID } from 'node:crypto';
import { expect, onTestFinished, test } from 'vitest';
import { type Beat, beat } from '#core/api/office-api.ts';
import { MOST_RESUMED } from '#main/hub/marks-after.ts';
import { milled, SMALL_JOB } from '../store/small-shop.ts';
import { type LiveHub, liveHub } from './live-hub.ts';

async function shopHub(): Promise<{ readonly live: LiveHub; readonly code: string }> {
  const live = await liveHub();
  const { body } = await live.ask('POST', '/jobs', SMALL_JOB);
  return { live, code: (body.parts as { code: string }[])[0]?.code ?? '' };
}

/** A mark of its own id on this part that any number of others may follow. */
const proved = (code: string) => milled(code, { id: randomUUID(), mark: 'proved' });

const QUIET_MS = 60;

/** What a stream says within a moment: its greeting, the numbers of the marks that it tells, and when to come back. */
async function begun({ hub }: LiveHub, query = '', headers: Record<string, string> = {}) {
  const stop = new AbortController();
  onTestFinished(() => stop.abort());
  const answer = await fetch(`${hub.url}/api/events${query}`, { signal: stop.signal, headers });
  expect(answer.status).toBe(200);
  const reader = answer.body?.pipeThrough(new TextDecoderStream()).getReader();
  let text = '';
  const greeted = (): Beat | null => {
    const data = /event: beat\ndata: (.*)\n\n/.exec(text)?.[1];
    return data === undefined ? null : beat.parse(JSON.parse(data));
  };
  const quiet = () => new Promise<null>((later) => setTimeout(() => later(null), QUIET_MS));
  // What was missed comes at once behind the greeting.
  for (let ended = false; !ended;) {
    const read = await Promise.race([reader?.read(), ...(greeted() === null ? [] : [quiet()])]);
    text += read?.value ?? '';
    ended = read === null;
  }
  stop.abort();
  return {
    greeting: greeted()?.greeting,
    tags: [greeted()?.jobs, greeted()?.shop],
    retry: Number(/^retry: (\d+)\n/.exec(text)?.[1]),
    told: [...text.matchAll(/\nid: (\d+)\n/g)].map(([, seq]) => Number(seq)),
  };
}
const after = ({ seq, mark }: { seq: number; mark: string }) => `?after=${seq}&mark=${mark}`;

test('a stream goes on from a mark that still stands, after a restart of the hub too, and else says that it begins anew', async () => {
  const { live, code } = await shopHub();
  const marks = [proved(code), proved(code), proved(code)];
  for (const mark of marks) await live.hub.store.mark(mark);
  const seqs: number[] = [];
  for await (const { seq } of live.hub.store.since(0)) seqs.push(seq);
  const [first, second, third] = seqs.map((seq, k) => ({ seq, mark: marks[k]?.id ?? '' }));
  if (first === undefined || second === undefined || third === undefined) throw new Error('three marks');

  const fresh = await begun(live);
  expect([fresh.greeting, fresh.told]).toEqual([{ resumed: false, last: third }, []]);
  expect(await begun(live, after(first))).toMatchObject({
    greeting: { resumed: true, last: third },
    told: [second.seq, third.seq],
  });
  await live.restart();
  expect(await begun(live)).toMatchObject({ greeting: { resumed: false, last: third } });
  expect(await begun(live, after(third))).toMatchObject({ greeting: { resumed: true }, told: [] });
  expect(await begun(live, after(second), { 'last-event-id': String(first.seq) })).toMatchObject({
    greeting: { resumed: true },
    told: [second.seq, third.seq],
  });
  for (const strange of [
    { seq: first.seq, mark: second.mark },
    { seq: third.seq + 1, mark: third.mark },
    { seq: 0, mark: '' },
    { seq: first.seq - 1, mark: first.mark },
  ])
    expect(await begun(live, after(strange))).toMatchObject({ greeting: { resumed: false }, told: [] });
  expect(await begun(live, `?after=${third.seq}`)).toMatchObject({ greeting: { resumed: false } });
  expect(await begun(live, '?after=-1&mark=x')).toMatchObject({ greeting: { resumed: false } });
});

test('a stream does not go on over data that were put in place, nor over more than is told sooner otherwise', async () => {
  const { live, code } = await shopHub();
  const { ask, hub } = live;
  const mark = proved(code);
  await hub.store.mark(mark);
  const known = { seq: hub.store.lastSeq, mark: mark.id };
  const backup = (await ask('POST', '/backups', {})).body as { name: string };
  expect(await begun(live, after(known))).toMatchObject({ greeting: { resumed: true, last: known } });
  await hub.store.mark(proved(code));
  expect((await ask('POST', `/backups/${backup.name}/restore`, {})).status).toBe(200);
  expect(await begun(live, after(known))).toMatchObject({ greeting: { resumed: false, last: known } });

  const base = proved(code);
  await hub.store.mark(base);
  const from = { seq: hub.store.lastSeq, mark: base.id };
  await Promise.all(Array.from({ length: MOST_RESUMED }, () => hub.store.mark(proved(code))));
  const most = await begun(live, after(from));
  expect([most.greeting?.resumed, most.told.length]).toEqual([true, MOST_RESUMED]);
  await hub.store.mark(proved(code));
  expect(await begun(live, after(from))).toMatchObject({ greeting: { resumed: false }, told: [] });
});

test('each beat tells by a tag whether the jobs and the shop are as they were; readers come back at different times', async () => {
  const { live } = await shopHub();
  const { ask } = live;
  const one = await begun(live);
  await live.restart();
  const again = await begun(live);
  expect(again.tags).toEqual(one.tags);
  expect((await ask('GET', '/jobs')).body.tag).toBe(one.tags[0]);
  const file = { ...SMALL_JOB, due: '2027-05-03' };
  expect((await ask('PUT', `/jobs/${SMALL_JOB.id}`, { revision: 1, file })).status).toBe(200);
  const changed = await begun(live);
  expect(changed.tags[0]).not.toBe(one.tags[0]);
  expect(changed.tags[1]).toBe(one.tags[1]);
  const { revision, ...shop } = (await ask('GET', '/shop')).body;
  expect((await ask('PUT', '/shop', { revision, shop: { ...shop, name: 'Other' } })).status).toBe(200);
  expect((await begun(live)).tags[1]).not.toBe(one.tags[1]);
  const retries = [one, again, changed].map(({ retry }) => retry);
  expect(new Set(retries).size).toBeGreaterThan(1);
  for (const retry of retries) expect(retry).toBeGreaterThanOrEqual(500);
  for (const retry of retries) expect(retry).toBeLessThan(1500);
});

/** The numbers of the marks that a stream tells until it is ended. */
async function toldUntil(
  { hub }: LiveHub,
  ended: Promise<unknown>,
  query: string,
  headers: Record<string, string>,
): Promise<number[]> {
  const stop = new AbortController();
  const answer = await fetch(`${hub.url}/api/events${query}`, { signal: stop.signal, headers });
  let text = '';
  const read = (async () => {
    for await (const piece of answer.body ?? []) text += Buffer.from(piece).toString();
  })().catch(() => undefined);
  await ended;
  stop.abort();
  await read;
  return [...text.matchAll(/\nid: (\d+)\n/g)].map(([, seq]) => Number(seq));
}

test('marks that come while readers are told what they missed are told to each once, in order', async () => {
  const { live, code } = await shopHub();
  const first = proved(code);
  await live.hub.store.mark(first);
  const place = { seq: live.hub.store.lastSeq, mark: first.id };
  await Promise.all(Array.from({ length: 300 }, () => live.hub.store.mark(proved(code))));
  // What was the last mark is looked for in the log after a start: meanwhile others come.
  await live.restart();
  const over = AbortSignal.timeout(300);
  const marks = (async () => {
    while (!over.aborted) await live.hub.store.mark(proved(code));
    await new Promise((later) => setTimeout(later, 150));
  })();
  const readers = Array.from({ length: 24 }, (_, k) =>
    k % 2 === 0
      ? toldUntil(live, marks, after(place), {})
      : toldUntil(live, marks, '', { 'last-event-id': String(place.seq) }),
  );
  for (const told of await Promise.all(readers)) {
    expect(told.length).toBeGreaterThan(300);
    expect(told).toEqual(told.map((_, k) => place.seq + 1 + k));
  }
});
