import pino from 'pino';
import { expect, test } from 'vitest';
import type { JobProgress } from '#core/marks/mark.ts';
import type { Plan } from '#core/plan/plan.ts';
import { refused } from '#main/printing/printer.ts';
import { milled, SMALL_JOB } from '../store/small-shop.ts';
import { type LiveHub, liveHub } from './live-hub.ts';

const [DOOR] = SMALL_JOB.doors;
const withDoor = (more: object) => ({ ...SMALL_JOB, doors: [{ ...DOOR, ...more }] });
const toPrint = async ({ ask }: LiveHub) => (await ask('GET', '/stickers')).body.jobs;
const count = (toPrint: number) => [{ id: 'boot-room', toPrint }];

async function withJob(): Promise<{
  live: LiveHub;
  codes: string[];
  code: (door: string, part: string) => string;
}> {
  const live = await liveHub();
  const parts = (await live.ask('POST', '/jobs', SMALL_JOB)).body.parts as Record<
    'code' | 'door' | 'part',
    string
  >[];
  return {
    live,
    codes: parts.map(({ code }) => code),
    code: (door, part) => parts.find((each) => each.door === door && each.part === part)?.code ?? '',
  };
}
const print = ({ ask }: LiveHub, codes: string[]) =>
  ask('POST', '/jobs/boot-room/printed', { codes, stock: 'roll-2x1' });

test('a new job has all its stickers to print, a printed one none, and a spoiled blank’s replacement is one', async () => {
  const { live, codes, code } = await withJob();
  expect(await toPrint(live)).toEqual(count(10));
  await print(live, codes);
  expect(await toPrint(live)).toEqual(count(0));
  const panel = code('LOCKER-1', 'panel');
  const { body } = await live.ask('POST', '/marks', milled(panel, { mark: 'spoiled', reason: 'Lost' }));
  expect(await toPrint(live)).toEqual(count(1));
  await print(live, [String(body.replacement)]);
  expect(await toPrint(live)).toEqual(count(0));
});

test('stickers printed before the sizes changed are to print again, until they fit or are printed; also after a restart', async () => {
  const { live, codes } = await withJob();
  await print(live, codes);
  const taller = withDoor({ opening: { width: '16', height: '31' } });
  const told = await live.ask('PUT', '/jobs/boot-room?dry=1', { revision: 1, file: taller });
  // Both stiles and the panel of each of two doors; the rails are as they were.
  expect(told.body).toMatchObject({ outdated: 6, disagreeing: 0, finished: [] });
  const stickers = told.body.stickers as { door: string; part: string }[];
  expect(stickers.map(({ door, part }) => `${door} ${part}`)).toEqual([
    ...['stile-left', 'stile-right', 'panel'].map((part) => `LOCKER-1 ${part}`),
    ...['stile-left', 'stile-right', 'panel'].map((part) => `LOCKER-2 ${part}`),
  ]);
  expect(await toPrint(live)).toEqual(count(0));
  await live.ask('PUT', '/jobs/boot-room', { revision: 1, file: taller });
  expect(await toPrint(live)).toEqual(count(6));
  await live.restart();
  expect(await toPrint(live)).toEqual(count(6));
  await live.ask('PUT', '/jobs/boot-room', { revision: 2, file: SMALL_JOB });
  expect(await toPrint(live)).toEqual(count(0));
  await live.ask('PUT', '/jobs/boot-room', { revision: 3, file: taller });
  await print(live, codes);
  expect(await toPrint(live)).toEqual(count(0));
});

test('a print that was written down without its figures counts as printed, whatever became of the sizes', async () => {
  const { live, codes } = await withJob();
  await live.hub.store.print({ job: 'boot-room', codes, stock: 'roll-2x1' });
  await live.ask('PUT', '/jobs/boot-room', {
    revision: 1,
    file: withDoor({ opening: { width: '17', height: '31' } }),
  });
  expect(await toPrint(live)).toEqual(count(0));
});

test('a finished door has no sticker to print, and stands apart where a change is asked about', async () => {
  const { live, codes } = await withJob();
  await print(live, codes);
  const plan = (await live.ask('GET', '/jobs/boot-room')).body as unknown as Plan;
  const [first, second] = plan.doors;
  if (first === undefined || second === undefined) throw new Error('the job has two doors');
  const own = first.parts[0]?.code ?? '';
  for (const { code, stage, station } of [
    ...first.parts.flatMap(({ code, stages }) => stages.map((stage) => ({ code, ...stage }))),
    ...first.stages.map((stage) => ({ code: own, ...stage })),
    ...second.parts.flatMap(({ code, stages }) => stages.slice(0, 1).map((stage) => ({ code, ...stage }))),
  ])
    expect((await live.ask('POST', '/marks', milled(code, { stage, station }))).status).toBe(200);
  const measured = {
    doors: { 'LOCKER-1': { opening: { height: '31' } }, 'LOCKER-2': { opening: { height: '31' } } },
  };
  const { body } = await live.ask('PUT', '/jobs/boot-room/measured?dry=1', { revision: 1, measured });
  expect(body).toMatchObject({ revision: 1, finished: ['LOCKER-1'], disagreeing: 3, outdated: 3 });
  expect(new Set((body.disagree as { door: string }[]).map(({ door }) => door))).toEqual(
    new Set(['LOCKER-2']),
  );
  const { doors } = (await live.ask('GET', '/jobs/boot-room/progress')).body as unknown as JobProgress;
  expect(Object.keys(doors['LOCKER-1']?.done ?? {})).toContain('trim');
});

test('screens are told when stickers were printed', async () => {
  const { live, codes } = await withJob();
  const stop = new AbortController();
  const events = await fetch(`${live.hub.url}/api/events`, { signal: stop.signal });
  const reader = events.body?.pipeThrough(new TextDecoderStream()).getReader();
  await print(live, codes);
  let heard = '';
  while (!heard.includes('event: print')) heard += (await reader?.read())?.value ?? '';
  stop.abort();
  expect(heard).toContain('event: print\ndata: {"job":"boot-room"}');
});

test('the printer that printed stickers last is told with its stock while it works, and no other', async () => {
  let accepting = true;
  const live = await liveHub({
    logger: pino({ level: 'silent' }),
    printing: {
      list: async () => ({ ok: true, printers: [{ name: 'Labels', accepting, state: 'idle' }] }),
      print: async () => refused('cancelled'),
    },
  });
  const parts = (await live.ask('POST', '/jobs', SMALL_JOB)).body.parts as { code: string }[];
  const codes = parts.map(({ code }) => code);
  const last = async () => (await live.ask('GET', '/printers')).body.stickers;
  await print(live, codes);
  expect(await last()).toBeUndefined();
  await live.hub.store.print({ job: 'boot-room', codes, stock: 'letter-3x10', printer: 'Labels' });
  expect(await last()).toEqual({ printer: 'Labels', stock: 'letter-3x10', positions: 30 });
  await live.hub.store.snapshot();
  await live.restart();
  expect(await last()).toEqual({ printer: 'Labels', stock: 'letter-3x10', positions: 30 });
  accepting = false;
  expect(await last()).toBeUndefined();
});
