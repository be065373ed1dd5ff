// @vitest-environment node

import { IDBFactory } from 'fake-indexeddb';
import { expect, test, vi } from 'vitest';
import type { Mark } from '#core/marks/mark.ts';
import { dependents, nextToSend } from '#ui/hub/sending-order.ts';
import { type Kept, KeptMarks } from '#ui/hub/kept-marks.ts';
import { type Around, Outbox } from '#ui/hub/outbox.svelte.ts';

let count = 0;
function mark(code: string, stage: string): Omit<Kept, 'order'> {
  count += 1;
  const id = `00000000-0000-4000-8000-${String(count).padStart(12, '0')}`;
  const sent: Mark = { id, code, station: 'milling', stage, mark: 'done', at: '2026-11-25T08:00:00Z' };
  return { mark: sent, job: 'quay', door: 'A-1', part: 'stile-left' };
}

/** A hub that can be away, and that refuses what it is told to. */
function world() {
  const received: Mark[] = [];
  const refuse = new Set<string>();
  /** Jobs that are in the bin. */
  const bin = new Set<string>();
  const state: { away: boolean; later: number | null } = { away: false, later: null };
  const marks = new KeptMarks('test', new IDBFactory());
  const shown = new Set<string>();
  const around: Around = {
    marks,
    send: async (sent) => {
      if (state.away) return { kind: 'away' };
      if (state.later !== null)
        return { kind: 'refused', status: state.later, refusal: { code: 'not-now', message: 'not now' } };
      if (refuse.has(sent.stage))
        return { kind: 'refused', status: 409, refusal: { code: 'already-done', message: 'done already' } };
      if (bin.has(sent.code))
        return { kind: 'refused', status: 409, refusal: { code: 'binned', message: 'in the bin' } };
      received.push(sent);
      return { kind: 'ok', value: { code: sent.code, stages: [], next: null } };
    },
    shown: ({ mark: { id } }) => shown.add(id),
    taken: (id) => shown.delete(id),
    dropped: (id) => shown.delete(id),
    settled: (id) => shown.delete(id),
  };
  return { received, refuse, bin, state, marks, shown, around };
}

test('a mark is taken by the hub and nothing stays kept', async () => {
  const { around, received, marks } = world();
  const posted = await new Outbox(around).post(mark('AAA', 'mill'));
  expect(posted.kind).toBe('ok');
  expect(received.map(({ stage }) => stage)).toEqual(['mill']);
  expect(await marks.all()).toEqual([]);
});

test('marks made while the hub is away are kept over a new page and sent once each, in order', async () => {
  const { around, received, state, marks, shown } = world();
  state.away = true;
  const before = new Outbox(around);
  for (const stage of ['mill', 'bead', 'groove'])
    expect(await before.post(mark('AAA', stage))).toEqual({ kind: 'kept' });
  expect(before.kept).toHaveLength(3);
  shown.clear();
  const after = new Outbox(around);
  await after.open();
  expect(after.kept.map((each) => each.mark.stage)).toEqual(['mill', 'bead', 'groove']);
  expect(shown.size).toBe(3);
  state.away = false;
  await after.send();
  await after.send();
  expect(received.map(({ stage }) => stage)).toEqual(['mill', 'bead', 'groove']);
  expect(await marks.all()).toEqual([]);
  expect(shown.size).toBe(0);
});

test('a refusal while somebody waits goes to them and is not kept', async () => {
  const { around, refuse, marks } = world();
  refuse.add('mill');
  expect(await new Outbox(around).post(mark('AAA', 'mill'))).toEqual({
    kind: 'refused',
    code: 'already-done',
    message: 'done already',
  });
  expect(await marks.all()).toEqual([]);
});

test('a kept mark that is refused holds back what stands on it, nothing else, until a person throws them away', async () => {
  const { around, refuse, received, state, marks, shown } = world();
  state.away = true;
  const outbox = new Outbox(around);
  await outbox.post(mark('AAA', 'mill'));
  await outbox.post(mark('BBB', 'mortise'));
  await outbox.post(mark('AAA', 'bead'));
  state.away = false;
  refuse.add('mill');
  await outbox.send();
  expect(received.map(({ code }) => code)).toEqual(['BBB']);
  expect(outbox.refused.map((each) => [each.mark.code, each.refused?.code])).toEqual([
    ['AAA', 'already-done'],
  ]);
  expect(shown.size).toBe(0);
  const [one] = outbox.refused;
  if (one === undefined) throw new Error('nothing refused');
  await outbox.decide(one, 'throw-away');
  expect(await marks.all()).toEqual([]);
  expect(received).toHaveLength(1);
});

test('on a new page neither a refused mark nor what stands on it is shown as made', async () => {
  const { around, refuse, state, marks, shown } = world();
  state.away = true;
  const outbox = new Outbox(around);
  for (const stage of ['mill', 'bead']) await outbox.post(mark('AAA', stage));
  state.away = false;
  refuse.add('mill');
  await outbox.send();
  state.away = true;
  await outbox.post(mark('BBB', 'mortise'));
  shown.clear();
  const after = new Outbox(around);
  await after.open();
  expect(after.refused).toHaveLength(1);
  expect([...shown]).toEqual(
    (await marks.all()).filter(({ mark: { code } }) => code === 'BBB').map((each) => each.mark.id),
  );
});

test('a refused mark can be sent again, and what stands on it follows', async () => {
  const { around, refuse, received, state } = world();
  state.away = true;
  const outbox = new Outbox(around);
  await outbox.post(mark('AAA', 'mill'));
  await outbox.post(mark('AAA', 'bead'));
  state.away = false;
  refuse.add('mill');
  await outbox.send();
  refuse.clear();
  const [one] = outbox.refused;
  if (one === undefined) throw new Error('nothing refused');
  await outbox.decide(one, 'again');
  expect(received.map(({ stage }) => stage)).toEqual(['mill', 'bead']);
});

test('a stage of the whole door stands on every kept mark of its parts', () => {
  const kept: Kept[] = [
    { ...mark('AAA', 'mill'), order: 1, refused: { code: 'spoiled', message: '' } },
    { ...mark('BBB', 'mill'), order: 2 },
    { ...mark('BBB', 'dryfit'), order: 3 },
    { ...mark('CCC', 'mill'), door: 'A-2', order: 4 },
  ];
  const [first] = kept;
  if (first === undefined) throw new Error('none');
  expect(dependents(kept, first).map(({ order }) => order)).toEqual([3]);
  expect(nextToSend(kept)?.order).toBe(2);
  expect(nextToSend(kept.slice(2))?.order).toBe(3);
});

test('a kept mark of a job in the bin asks nobody, waits, and counts once the job is back, what stands on it too', async () => {
  const { around, received, bin, state, marks, shown } = world();
  const outbox = new Outbox(around);
  state.away = true;
  for (const stage of ['mill', 'bead']) await outbox.post(mark('AAA', stage));
  await outbox.post(mark('BBB', 'mill'));
  bin.add('AAA');
  state.away = false;
  await outbox.send();
  expect(received.map(({ code }) => code)).toEqual(['BBB']);
  expect(outbox.refused).toEqual([]);
  expect(outbox.binned).toMatchObject([{ mark: { stage: 'mill' }, refused: { code: 'binned' } }]);
  expect(await marks.all()).toHaveLength(2);
  expect(shown.size).toBe(0);
  await outbox.sendBinned();
  expect(outbox.binned).toHaveLength(1);
  bin.clear();
  const after = new Outbox(around);
  await after.open();
  expect(after.binned).toHaveLength(1);
  await after.sendBinned();
  expect(received.map(({ code, stage }) => `${code} ${stage}`)).toEqual(['BBB mill', 'AAA mill', 'AAA bead']);
  expect(await marks.all()).toEqual([]);
});

test('a mark that somebody makes just as its job goes into the bin is told to them, and not kept', async () => {
  const { around, bin, marks } = world();
  bin.add('AAA');
  expect(await new Outbox(around).post(mark('AAA', 'mill'))).toMatchObject({
    kind: 'refused',
    code: 'binned',
  });
  expect(await marks.all()).toEqual([]);
});

test.each([
  [401, 'of a device that was revoked are kept, and sent once it is paired again'],
  [421, 'that the hub does not take by this name just now are kept, and sent once it does'],
  [429, 'that come more quickly than the hub takes them are kept, and sent later'],
  [507, 'that the hub cannot write down are kept, and sent once it can'],
])('%i: marks %s', async (status) => {
  const { around, received, state, marks } = world();
  state.later = status;
  const outbox = new Outbox(around);
  for (const stage of ['mill', 'bead'])
    expect(await outbox.post(mark('AAA', stage))).toEqual({ kind: 'kept' });
  expect(outbox.refused).toEqual([]);
  state.later = null;
  const again = new Outbox(around);
  await again.open();
  await again.send();
  expect(received.map(({ stage }) => stage)).toEqual(['mill', 'bead']);
  expect(await marks.all()).toEqual([]);
});

test('what is marked while what it stands on is being refused is not shown as made, nor once that is thrown away', async () => {
  const { around, refuse, state, marks, shown } = world();
  state.away = true;
  await new Outbox(around).post(mark('AAA', 'mill'));
  shown.clear();
  state.away = false;
  refuse.add('mill');
  let answer = (): void => undefined;
  const asked = new Promise<void>((done) => (answer = done));
  const outbox = new Outbox({
    ...around,
    async send(sent) {
      await asked;
      return around.send(sent);
    },
  });
  const opened = outbox.open();
  await vi.waitFor(() => expect(shown.size).toBe(1));
  // The hub has the first one and thinks; at the station the work goes on.
  const posted = outbox.post(mark('AAA', 'bead'));
  await vi.waitFor(() => expect(shown.size).toBe(2));
  answer();
  await opened;
  expect(await posted).toEqual({ kind: 'kept' });
  const [one] = outbox.refused;
  if (one === undefined) throw new Error('nothing refused');
  expect(shown.size).toBe(0);
  await outbox.decide(one, 'throw-away');
  expect(await marks.all()).toEqual([]);
  expect(shown.size).toBe(0);
});

test('a mark that another page of this browser sent, or had refused, is not shown as made by this one', async () => {
  const { around, refuse, state, marks, shown } = world();
  state.away = true;
  const here = new Outbox(around);
  for (const code of ['AAA', 'BBB']) await here.post(mark(code, code === 'AAA' ? 'mill' : 'bead'));
  expect(shown.size).toBe(2);
  const nothing = () => undefined;
  const other = new Outbox({ ...around, shown: nothing, taken: nothing, dropped: nothing, settled: nothing });
  state.away = false;
  refuse.add('mill');
  await other.open();
  expect((await marks.all()).map((each) => each.refused?.code)).toEqual(['already-done']);
  expect(here.waits).toBe(true);
  await here.send();
  expect(here.refused).toHaveLength(1);
  expect(shown.size).toBe(0);
});

test('until the marks of an earlier page could be read, something may be left to send', async () => {
  const { around, marks, received } = world();
  await marks.add(mark('AAA', 'mill'));
  const broken = vi.spyOn(marks, 'all').mockRejectedValueOnce(new Error('the browser opened no database'));
  const outbox = new Outbox(around);
  await expect(outbox.open()).rejects.toThrow('no database');
  expect(broken).toHaveBeenCalledOnce();
  expect(outbox.waits).toBe(true);
  await outbox.send();
  expect(received).toHaveLength(1);
  expect(outbox.waits).toBe(false);
});
