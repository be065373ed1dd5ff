import { crc32 } from 'node:zlib';
import { expect, test } from 'vitest';
import { partCode } from '#core/codes/part-code.ts';
import { archiveLines } from '#main/store/archive/archive-lines.ts';
import { Backups } from '#main/store/archive/backups.ts';
import { disk } from '#main/store/files/disk.ts';
import { MOST_SEQ } from '#main/store/log/event-log.ts';
import { writeLine } from '#main/store/log/log-line.ts';
import { ArchiveFault } from '#main/store/archive/read-archive.ts';
import { restoringInto } from '#main/store/archive/restore.ts';
import type { Store } from '#main/store/store.ts';
import { freshFolder } from './fresh-folder.ts';
import { milled, openStore, partsOf, SMALL_JOB, smallShop } from './small-shop.ts';

const AT = '2026-11-25T08:00:00.000Z';
const FORMAT = { kind: 'format', format: 2, version: 'test', at: AT };
const CODE = partCode({ job: SMALL_JOB.id, mark: 'LOCKER', k: 1, part: 'stile-left', replacement: 0 });
const NEXT = partCode({ job: SMALL_JOB.id, mark: 'LOCKER', k: 1, part: 'stile-left', replacement: 1 });

const marked = (mark: object = {}, about: object = {}) => ({
  kind: 'mark',
  mark: {
    received: AT,
    job: SMALL_JOB.id,
    door: 'LOCKER-1',
    part: 'stile-left',
    mark: { ...milled(CODE), ...mark },
    ...about,
  },
});
const printed = (print: object = {}) => ({
  kind: 'print',
  print: { job: SMALL_JOB.id, codes: [CODE], at: AT, stock: 'a4-3x8', reprint: false, ...print },
});
const spoiled = (replacement: unknown) => marked({ mark: 'spoiled' }, { replacement });

interface Made {
  readonly job?: object;
  readonly entries?: readonly (readonly [seq: number, entry: unknown])[];
}

/** An archive with right sums and counts, whatever stands in it. */
async function archiveOf(store: Store, { job = {}, entries = [] }: Made): Promise<Buffer> {
  const out: string[] = [];
  for await (const line of archiveLines(store, 'test')) out.push(line);
  const [, head = '', shop = '', whole = ''] = out;
  const last = entries.at(-1)?.[0] ?? 0;
  const document = (JSON.parse(whole.slice(0, -2)) as { job: object }).job;
  const lines = [
    '[',
    head.trim().replace(/"seq":\d+/, `"seq":${last}`),
    shop.trim(),
    `${JSON.stringify({ job: { ...document, ...job } })},`,
    ...entries.map(([seq, entry]) => `${writeLine(seq, entry).trim()},`),
  ];
  const sum = crc32(`${lines.join('\n')}\n`);
  const end = { jobs: 1, entries: entries.length, last, sum };
  return Buffer.from(`${lines.join('\n')}\n${JSON.stringify({ end })}\n]\n`);
}

async function* whole(bytes: Buffer): AsyncGenerator<Buffer> {
  yield bytes;
}

async function shopToTake() {
  const folder = freshFolder();
  const store = await smallShop(folder);
  const backups = new Backups(disk, folder);
  const restore = restoringInto(disk, folder, store, backups, 'test');
  return { folder, store, backups, restore };
}

test('an archive whose entries are all as this program writes them is taken', async () => {
  const { store, restore } = await shopToTake();
  const archive = await archiveOf(store, {
    entries: [
      [1, FORMAT],
      [2, marked({ by: 'Ada', reason: 'a knot' })],
      [3, spoiled({ code: NEXT, number: 1 })],
      [4, printed({ printer: 'Label', by: 'Ada' })],
      [5, printed({ says: ['1:0123456789'] })],
      [9, { kind: 'restored', from: 'an exported file', at: AT }],
    ],
  });
  expect(await restore('archive', whole(archive), 'foreign')).toMatchObject({ jobs: 1, entries: 6 });
  expect(store.find(CODE)?.found.part.code).toBe(NEXT);
  await store.close();
});

test.each<[string, unknown, RegExp]>([
  ['no mark', { kind: 'mark', mark: null }, /mark: /],
  ['a mark without its inside', { kind: 'mark', mark: { job: 'x', door: 'A-1' } }, /line 6: mark/],
  ['an id that is a number', marked({ id: 5 }), /mark\.mark\.id/],
  ['an id that is no uuid', marked({ id: 'zz' }), /expected a uuid/],
  ['a stage that is an object', marked({ stage: { a: 1 } }), /stage/],
  ['a stage that is no name', marked({ stage: '__proto__' }), /stage/],
  ['a code that is none', marked({ code: '__proto__' }), /expected the code of a part/],
  ['a code as it is typed', marked({ code: CODE.toLowerCase() }), /expected the code of a part/],
  ['a station that is none', marked({ station: 'moon' }), /station/],
  ['a mark of no kind', marked({ mark: 'constructor' }), /mark/],
  ['a time that is none', marked({ at: 'yesterday' }), /mark\.mark\.at/],
  ['a field nobody knows', marked({ more: 1 }), /mark\.mark/],
  ['a door that is none', marked({}, { door: '__proto__' }), /expected the name of a door/],
  ['a door of a mark too long', marked({}, { door: 'THIRTEEN-LONG-1' }), /expected the name of a door/],
  ['a job that is none', marked({}, { job: 'a\nb' }), /expected the id of a job/],
  ['a part that is none', marked({}, { part: '__proto__' }), /part/],
  ['a time of receipt that is an object', marked({}, { received: { x: 1 } }), /received/],
  ['a replacement that is itself', spoiled({ code: CODE, number: 1 }), /expected the code that follows/],
  ['a replacement with a code of its own choice', spoiled({ code: 'AAAAAAAAAA', number: 1 }), /replacement/],
  ['a replacement that is a number', spoiled({ code: 7, number: 'x' }), /replacement/],
  ['a spoiled part without replacement', spoiled(undefined), /expected the code that follows/],
  ['a replacement of what is not spoiled', marked({}, { replacement: { code: NEXT, number: 1 } }), /follows/],
  ['no print', { kind: 'print', print: null }, /print/],
  ['a print of no codes', printed({ codes: [] }), /codes/],
  ['a print that does not say of each code what stood on it', printed({ says: [] }), /says/],
  ['a print of codes that are none', printed({ codes: ['constructor'] }), /expected the code of a part/],
  ['a format that is a text', { ...FORMAT, format: 'x' }, /format/],
  ['a format below the first', { ...FORMAT, format: -1 }, /format/],
  ['a kind nobody knows', { kind: 'weather' }, /unknown kind/],
  [
    'a newer format, whatever else that says,',
    { kind: 'format', format: 999, by: 'a later version' },
    /^the log was written by a newer version of Shoulderline \(format 999; this one knows up to 2\)/,
  ],
])('an archive with %s in its log is refused, and nothing has changed', async (_what, entry, words) => {
  const { store, backups, restore } = await shopToTake();
  const archive = await archiveOf(store, {
    entries: [
      [1, FORMAT],
      [2, entry],
    ],
  });
  const refused = restore('archive', whole(archive), 'foreign');
  await expect(refused).rejects.toThrow(ArchiveFault);
  await expect(refused).rejects.toThrow(words);
  expect(await backups.list()).toEqual([]);
  expect(await store.mark(milled(partsOf(store)[3]?.code ?? ''))).toMatchObject({ ok: true });
  await store.close();
});

test.each<[string, object, RegExp]>([
  ['an empty id', { id: '' }, /expected the id of a job/],
  ['an id of dots', { id: '..' }, /expected the id of a job/],
  ['an id of two lines', { id: 'a\nb' }, /expected the id of a job/],
  ['an id without end', { id: 'a'.repeat(100_000) }, /expected the id of a job/],
  ['a revision below zero', { revision: -5 }, /revision/],
  ['a revision that leaves none after it', { revision: Number.MAX_SAFE_INTEGER }, /revision/],
  ['a time that is none', { added: 'x'.repeat(1000) }, /added/],
])('a job with %s is refused', async (_what, job, words) => {
  const { store, restore } = await shopToTake();
  const archive = await archiveOf(store, { job, entries: [[1, FORMAT]] });
  await expect(restore('archive', whole(archive), 'foreign')).rejects.toThrow(words);
  await store.close();
});

test('numbers that would leave none for the marks to come are refused, and the last ones are not given out', async () => {
  const { folder, store, restore } = await shopToTake();
  const greatest = await archiveOf(store, {
    entries: [
      [1, FORMAT],
      [MOST_SEQ / 2, marked()],
    ],
  });
  await restore('archive', whole(greatest), 'foreign');
  expect(await store.mark(milled(partsOf(store)[3]?.code ?? ''))).toMatchObject({ ok: true });
  const above = await archiveOf(store, {
    entries: [
      [1, FORMAT],
      [MOST_SEQ / 2 + 1, marked()],
    ],
  });
  await expect(restore('archive', whole(above), 'foreign')).rejects.toThrow(/a number above 2000000000/);
  await store.close();
  await disk.remove(`${folder}/snapshot.bin`);
  const log = await disk.grow(`${folder}/log.jsonl`);
  await log.write(Buffer.from(writeLine(MOST_SEQ - 1, marked({ id: milled(CODE).id }))));
  await log.close();
  const last = await openStore(folder);
  const [, , , , , one, two] = partsOf(last);
  const taken = await last.mark(milled(one?.code ?? ''));
  expect(taken.ok && taken.accepted.seq).toBe(MOST_SEQ);
  await expect(last.mark(milled(two?.code ?? ''))).rejects.toThrow(/numbers are used up/);
  expect(last.lastSeq).toBe(MOST_SEQ);
  await last.close();
});

test('one’s own backup of a log with a line nobody knows is put back with it', async () => {
  const { folder, store } = await shopToTake();
  await store.close();
  const log = await disk.grow(`${folder}/log.jsonl`);
  await log.write(Buffer.from(writeLine(50, { kind: 'weather', rain: true })));
  await log.close();
  const again = await openStore(folder);
  const backups = new Backups(disk, folder);
  const backup = await backups.make(again, 'test', 5);
  const bytes = await backups.open(backup.name);
  if (bytes === null) throw new Error('no backup');
  const restore = restoringInto(disk, folder, again, backups, 'test');
  expect(await restore(backup.name, bytes, 'own')).toMatchObject({ entries: 2 });
  expect(again.found.strange).toBe(1);
  await again.close();
});
