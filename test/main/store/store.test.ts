import {
  appendFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import type { AcceptedMark } from '#core/marks/mark.ts';
import { documentName } from '#main/store/documents/job-document.ts';
import { writeLine } from '#main/store/log/log-line.ts';
import { NewerFormat } from '#main/store/files/migration.ts';
import type { Store } from '#main/store/store.ts';
import { freshFolder } from './fresh-folder.ts';
import { milled, openStore, partsOf, SMALL_JOB, smallShop, planOf } from './small-shop.ts';
import { tryingPort } from './trying-port.ts';

async function everyMark(store: Store): Promise<AcceptedMark[]> {
  const all: AcceptedMark[] = [];
  for await (const mark of store.since(0)) all.push(mark);
  return all;
}

test('a store opened again stands where it stood, with a snapshot and without', async () => {
  const folder = freshFolder();
  const store = await smallShop(folder);
  const codes = partsOf(store).map(({ code }) => code);
  for (const code of codes.slice(0, 5)) await store.mark(milled(code));
  await store.mark(milled(codes[0] ?? '', { mark: 'spoiled', reason: 'a knot' }));
  await store.print({ job: 'boot-room', codes: codes.slice(0, 2), stock: 'a4-3x8' });
  await store.snapshot();
  await store.mark(milled(codes[6] ?? ''));
  const stood = {
    progress: store.progress('boot-room'),
    printed: store.printed('boot-room'),
    board: store.board(),
  };
  await store.close();

  const quick = await openStore(folder);
  expect(quick.found.noSnapshot).toBeNull();
  expect(quick.found.scanned.damaged).toEqual([]);
  expect({
    progress: quick.progress('boot-room'),
    printed: quick.printed('boot-room'),
    board: quick.board(),
  }).toEqual(stood);
  const marks = await everyMark(quick);
  await quick.close();

  const other = await openStore(folder, undefined, 'another version');
  expect(other.found.noSnapshot).toBe('version test wrote it');
  expect(other.progress('boot-room')).toEqual(stood.progress);
  expect(await everyMark(other)).toEqual(marks);
  expect(marks).toHaveLength(7);
  await other.close();
});

test('a damaged snapshot is never trusted, wherever a byte of it is wrong', async () => {
  const folder = freshFolder();
  const store = await smallShop(folder);
  for (const { code } of partsOf(store).slice(0, 5)) await store.mark(milled(code));
  await store.snapshot();
  const stood = store.progress('boot-room');
  await store.close();
  const path = join(folder, 'snapshot.bin');
  const whole = readFileSync(path);
  const places = Array.from({ length: 20 }, (_, k) => Math.floor(((k + 0.5) * whole.length) / 20));
  for (const at of [...places, ...Array.from({ length: 10 }, (_, k) => k * 17)]) {
    const damaged = Buffer.from(whole);
    damaged[at] = (damaged[at] ?? 0) ^ 0x15;
    writeFileSync(path, damaged);
    const opened = await openStore(folder);
    expect(opened.progress('boot-room'), `byte ${at}`).toEqual(stood);
    expect(opened.jobs.all()).toHaveLength(1);
    await opened.close();
  }
}, 30_000);

test('a snapshot that knows more than the log, or that belongs to another log, is passed over', async () => {
  const folder = freshFolder();
  const store = await smallShop(folder);
  for (const { code } of partsOf(store).slice(0, 3)) await store.mark(milled(code));
  await store.snapshot();
  await store.close();
  const log = join(folder, 'log.jsonl');
  const lines = readFileSync(log, 'utf8').split('\n');
  writeFileSync(log, `${lines.slice(0, 3).join('\n')}\n`);
  const shorter = await openStore(folder);
  expect(shorter.found.noSnapshot).toBe('it knows more than the log');
  expect(Object.keys(shorter.progress('boot-room').parts)).toHaveLength(2);
  await shorter.close();
});

test('an id is the same in whatever case it is written, at once, later, and after a restart', async () => {
  const folder = freshFolder();
  const store = await smallShop(folder);
  const mark = milled(partsOf(store)[0]?.code ?? '', {
    id: 'abcdef00-0000-4000-8000-00000000abcd',
    mark: 'proved',
  });
  const loud = { ...mark, id: mark.id.toUpperCase() };
  const told = await Promise.all([store.mark(loud), store.mark(mark), store.mark(loud)]);
  expect(told[1]).toEqual(told[0]);
  expect(told[2]).toEqual(told[0]);
  expect(await store.mark({ ...loud, by: 'Ada' })).toMatchObject({ ok: false, code: 'id-reused' });
  await store.close();
  const again = await openStore(folder);
  expect(await again.mark(loud)).toMatchObject({ ok: true });
  expect((await everyMark(again)).map((each) => each.mark.id)).toEqual([mark.id]);
  await again.close();
});

test.each([
  ['is gone', (log: string) => rmSync(log)],
  ['was emptied', (log: string) => writeFileSync(log, '')],
  [
    'was put back from an older copy and gone on with',
    (log: string) => {
      const [first = ''] = readFileSync(log, 'utf8').split('\n');
      const other = { kind: 'restored', from: 'elsewhere'.repeat(300), at: '2026-11-25T08:00:00Z' };
      writeFileSync(log, `${first}\n${writeLine(2, other)}`);
    },
  ],
])(
  'when the log %s, the snapshot that knew more is kept, told of, and numbers go on from it',
  async (_what, lose) => {
    const folder = freshFolder();
    const store = await smallShop(folder);
    for (const { code } of partsOf(store).slice(0, 3)) await store.mark(milled(code));
    await store.snapshot();
    const reached = store.lastSeq;
    await store.close();
    const snapshot = readFileSync(join(folder, 'snapshot.bin'));
    lose(join(folder, 'log.jsonl'));
    for (const version of ['a newer one', 'test']) {
      const opened = await openStore(folder, undefined, version);
      expect(opened.found.knewMore).toEqual(['snapshot.bin.knew-more']);
      const told = await opened.mark(milled(partsOf(opened)[5]?.code ?? '', { mark: 'proved' }));
      expect(told.ok && told.accepted.seq).toBeGreaterThan(reached);
      await opened.snapshot();
      await opened.close();
      expect(readFileSync(join(folder, 'snapshot.bin.knew-more')).equals(snapshot)).toBe(true);
    }
    rmSync(join(folder, 'snapshot.bin.knew-more'));
    const settled = await openStore(folder);
    expect(settled.found).toMatchObject({ knewMore: [], noSnapshot: null });
    await settled.close();
  },
);

test('what an import that was cut off has left is gone at the next start', async () => {
  const folder = freshFolder();
  await (await smallShop(folder)).close();
  mkdirSync(join(folder, 'incoming', 'jobs'), { recursive: true });
  writeFileSync(join(folder, 'incoming', 'jobs', 'half.json'), '{');
  const store = await openStore(folder);
  expect(existsSync(join(folder, 'incoming'))).toBe(false);
  expect(store.jobs.all()).toHaveLength(1);
  await store.close();
});

test('a snapshot that cannot be read at all does not stop the start, is kept aside, and the next one is written', async () => {
  const folder = freshFolder();
  const store = await smallShop(folder);
  await store.mark(milled(partsOf(store)[0]?.code ?? ''));
  const stood = store.progress('boot-room');
  await store.close();
  mkdirSync(join(folder, 'snapshot.bin'));
  const opened = await openStore(folder);
  expect(opened.found.noSnapshot).toMatch(/^it cannot be read: EISDIR/);
  expect(opened.progress('boot-room')).toEqual(stood);
  await opened.snapshot();
  await opened.close();
  expect(readdirSync(folder)).toContain('snapshot.bin.unreadable');
  const quick = await openStore(folder);
  expect(quick.found.noSnapshot).toBeNull();
  await quick.close();
});

test('the same id again answers the same and adds nothing, even after a restart; another content is refused', async () => {
  const folder = freshFolder();
  const store = await smallShop(folder);
  const [part] = partsOf(store);
  const mark = milled(part?.code ?? '');
  const both = await Promise.all([store.mark(mark), store.mark(mark)]);
  expect(both[0]).toEqual(both[1]);
  await store.mark(milled(mark.code, { station: 'router-table', stage: 'bead' }));
  await store.close();
  const again = await openStore(folder);
  const told = await again.mark(mark);
  expect(told.ok && told.accepted).toEqual(both[0].ok && both[0].accepted);
  expect(told.ok && Object.keys(told.progress.parts[mark.code]?.done ?? {})).toEqual(['mill']);
  expect(await again.mark({ ...mark, stage: 'bead' })).toEqual({ ok: false, code: 'id-reused' });
  expect(await everyMark(again)).toHaveLength(2);
  await again.close();
});

test('clocks that jump reorder nothing: order is the order of the answers', async () => {
  const folder = freshFolder();
  const store = await smallShop(folder);
  const code = partsOf(store)[0]?.code ?? '';
  vi.useFakeTimers({ toFake: ['Date'] });
  try {
    vi.setSystemTime('2031-01-01T00:00:00Z');
    await store.mark(milled(code, { at: '2031-01-01T00:00:00Z' }));
    vi.setSystemTime('1999-01-01T00:00:00Z');
    await store.mark(milled(code, { mark: 'undo', at: '1999-01-01T00:00:00Z' }));
    vi.setSystemTime('2026-11-25T00:00:00Z');
    await store.mark(milled(code, { at: '1970-01-01T00:00:00Z' }));
  } finally {
    vi.useRealTimers();
  }
  await store.close();
  const again = await openStore(folder);
  expect((await everyMark(again)).map(({ mark }) => mark.mark)).toEqual(['done', 'undo', 'done']);
  expect(Object.keys(again.progress('boot-room').parts[code]?.done ?? {})).toEqual(['mill']);
  await again.close();
});

test('marks refused by the disk leave nothing behind and can be made again', async () => {
  const folder = freshFolder();
  const port = tryingPort();
  const store = await smallShop(folder, port);
  const code = partsOf(store)[0]?.code ?? '';
  port.break('flush', 'ENOSPC', /^log/);
  const mark = milled(code);
  await expect(store.mark(mark)).rejects.toThrow('ENOSPC');
  await expect(store.mark(milled(code, { station: 'router-table', stage: 'bead' }))).resolves.toMatchObject({
    ok: false,
    code: 'stage-not-reached',
  });
  port.mend();
  expect(await store.mark(mark)).toMatchObject({ ok: true });
  await store.close();
  const again = await openStore(folder);
  expect((await everyMark(again)).map((each) => each.mark.id)).toEqual([mark.id]);
  await again.close();
});

test.each([
  ['write', 'ENOSPC'],
  ['flush', 'EIO'],
  ['rename', 'EIO'],
] as const)('a job whose %s fails with %s stays as it was, on disk and in memory', async (step, code) => {
  const folder = freshFolder();
  const port = tryingPort();
  const store = await smallShop(folder, port);
  port.break(step, code, /json/);
  const file = { ...SMALL_JOB, job: 'Another name' };
  await expect(store.jobs.update('boot-room', 1, file)).rejects.toThrow(code);
  expect(planOf(store.jobs.get('boot-room')).job).toBe('Millbrook boot room');
  port.mend();
  await store.close();
  const again = await openStore(folder);
  expect(again.jobs.get('boot-room')?.document).toMatchObject({ revision: 1, file: { job: SMALL_JOB.job } });
  expect(await again.jobs.update('boot-room', 1, file)).toMatchObject({ kind: 'changed' });
  await again.close();
});

test.each([
  [
    'a job',
    (folder: string) => writeFileSync(join(folder, 'jobs', documentName('boot-room')), '{"format":99}'),
  ],
  ['the shop', (folder: string) => writeFileSync(join(folder, 'shop.json'), '{"format":99}')],
  [
    'the log',
    (folder: string) =>
      appendFileSync(
        join(folder, 'log.jsonl'),
        writeLine(99, { kind: 'format', format: 99, version: '9', at: '2030-01-01T00:00:00Z' }),
      ),
  ],
])('%s written by a newer version stops the start, and every file stays as it is', async (_what, write) => {
  const folder = freshFolder();
  await (await smallShop(folder)).close();
  write(folder);
  const names = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((each) => each.isFile());
  const before = names.map(({ parentPath, name }) => readFileSync(join(parentPath, name), 'latin1'));
  await expect(openStore(folder)).rejects.toThrow(NewerFormat);
  expect(names.map(({ parentPath, name }) => readFileSync(join(parentPath, name), 'latin1'))).toEqual(before);
});

test('lines whose kind nobody knows are counted and stop nothing', async () => {
  const folder = freshFolder();
  await (await smallShop(folder)).close();
  appendFileSync(join(folder, 'log.jsonl'), writeLine(50, { kind: 'weather', rain: true }));
  const store = await openStore(folder);
  expect(store.found.strange).toBe(1);
  expect(store.lastSeq).toBe(50);
  await store.close();
});
