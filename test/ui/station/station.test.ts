import 'fake-indexeddb/auto';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { indexParts } from '#core/marks/live-plan.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { Plan, PlanPart } from '#core/plan/plan.ts';
import type { Mark } from '#core/marks/mark.ts';
import { Station } from '#ui/station/station.svelte.ts';
import { live } from '#ui/hub/live.svelte.ts';
import { shop } from '#ui/hub/shop.svelte.ts';
import { person } from '#ui/people/person.svelte.ts';
import { wrongTyped } from '#ui/station/messages.ts';
import { openShop } from './shop-for-stations.ts';

let plan: Plan;
let made: Mark[];
let mark: (mark: Mark) => void;

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['performance', 'setTimeout', 'clearTimeout'] });
  ({ plan, made, mark } = openShop());
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

const parts = (): readonly PlanPart[] => plan.doors[0]?.parts ?? [];
function part(name: string): PlanPart {
  const found = parts().find((each) => each.part === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
}
/** Everything that comes before the door is put together. */
function allPartsDone(): void {
  for (const { code, stages } of parts())
    for (const { stage, station } of stages)
      mark({ id: `${code} ${stage}`, code, station, stage, mark: 'done', at: '2026-11-26T08:00:00Z' });
}
/** The settled promises of a mark. */
const settled = () => vi.advanceTimersByTimeAsync(1);
const doneStages = () => made.filter((each) => each.mark === 'done').map(({ stage }) => stage);

test('two taps on Done at assembly mark the dry fit and not the glue-up that came up under the finger', async () => {
  allPartsDone();
  const station = new Station('assembly');
  for (const { code } of parts()) station.scan(code);
  expect(station.setup?.stage.stage).toBe('dryfit');
  await station.done();
  expect(station.setup?.stage.stage).toBe('glue');
  await station.done();
  await vi.advanceTimersByTimeAsync(1900);
  await station.done();
  expect(doneStages()).toEqual(['dryfit']);
  await vi.advanceTimersByTimeAsync(200);
  await station.done();
  expect(doneStages()).toEqual(['dryfit', 'glue']);
});

test('a scan marks the glue-up after 800 ms, as it does everywhere, though a tap would have to wait', async () => {
  allPartsDone();
  const station = new Station('assembly');
  const codes = parts().map(({ code }) => code);
  for (const code of codes) station.scan(code);
  await station.done();
  await vi.advanceTimersByTimeAsync(700);
  station.scan(codes.at(-1) ?? '');
  await settled();
  expect(doneStages()).toEqual(['dryfit']);
  await vi.advanceTimersByTimeAsync(200);
  station.scan(codes.at(-1) ?? '');
  await settled();
  expect(doneStages()).toEqual(['dryfit', 'glue']);
});

test('a setup that was scanned is live at once', async () => {
  const station = new Station('milling');
  station.scan(part('stile-left').code);
  await station.done();
  expect(doneStages()).toEqual(['mill']);
});

test('what is taken back is the last part marked here, and after a blank was given up nothing is', async () => {
  const station = new Station('milling');
  station.scan(part('stile-left').code);
  await station.done();
  expect(station.shownLast?.text).toContain('Left stile of BENCH-1');
  station.scan(part('stile-right').code);
  expect(station.shownLast).toBeNull();
  await station.spoil('Split or torn out');
  expect(station.message?.code).toBe('replacement');
  expect(station.shownLast).toBeNull();
  await station.undo();
  expect(made.map((each) => each.mark)).toEqual(['done', 'spoiled']);
});

test('the last mark can be taken back again once the part that was opened since is put away', async () => {
  const station = new Station('milling');
  station.scan(part('stile-left').code);
  await station.done();
  station.scan(part('stile-right').code);
  station.putAway();
  expect(station.shownLast?.text).toContain('Left stile of BENCH-1');
  expect(station.undoSeconds).toBeLessThanOrEqual(60);
});

test('a set-up that nobody proved is asked about before its first part, and once: neither after "not yet" nor after a part', async () => {
  const station = new Station('milling');
  const asks = (name: string) => {
    station.scan(part(name).code);
    return station.setup !== null && station.asksProof(station.setup);
  };
  expect(asks('stile-left')).toBe(true);
  if (station.setup !== null) station.notYet(station.setup);
  expect(asks('stile-right')).toBe(false);
  expect(doneStages()).toEqual([]);
  expect(asks('rail-bottom')).toBe(true);
  await station.done();
  expect(doneStages()).toEqual(['mill']);
  station.scan(plan.doors[1]?.parts.find(({ part: name }) => name === 'rail-bottom')?.code ?? '');
  expect(station.setup !== null && station.asksProof(station.setup)).toBe(false);
});

test('proved once at milling, parts of the same width and thickness are not asked about, whatever their length', async () => {
  const station = new Station('milling');
  station.scan(part('stile-left').code);
  if (station.setup !== null) await station.prove(station.setup);
  expect(made.at(-1)).toMatchObject({ mark: 'proved', stage: 'mill', code: part('stile-left').code });
  for (const [name, asked] of [
    ['stile-left', false],
    ['rail-top', false],
    ['rail-bottom', true],
    ['panel', true],
  ] as const) {
    station.scan(part(name).code);
    expect(station.setup !== null && station.asksProof(station.setup), name).toBe(asked);
  }
});

test('a setup whose job is gone, as after a restore, is put away and says so; one whose job only moved on stays', () => {
  const station = new Station('milling');
  station.scan(part('stile-left').code);
  mark({
    id: 'other',
    code: part('panel').code,
    station: 'milling',
    stage: 'mill',
    mark: 'done',
    at: '2026-11-26T08:00:00Z',
  });
  station.check(live.jobs);
  expect(station.setup?.code).toBe(part('stile-left').code);
  live.jobs = new Map();
  station.check(live.jobs);
  expect(station.setup).toBeNull();
  expect(station.message?.text).toBe('Left stile of BENCH-1 is not in any job now. Its set-up was put away.');
});

test('a setup whose numbers the office changed meanwhile is put away, and asks for another scan', () => {
  const station = new Station('milling');
  station.scan(part('stile-left').code);
  const [id, job] = [...live.jobs][0] ?? [];
  if (id === undefined || job === undefined) throw new Error('no job');
  const wider = planFile({ ...(job.file as object), defaults: { stile: { width: '3' } } });
  if (!wider.ok) throw new Error('the job has faults');
  live.jobs = new Map([[id, { ...job, plan: wider.value, index: indexParts(wider.value) }]]);
  station.check(live.jobs);
  expect(station.setup).toBeNull();
  expect(station.message?.code).toBe('job-changed');
});

test('a badge that nobody in the shop has is asked about once, and not used before it is answered', () => {
  const station = new Station('milling');
  const people = vi
    .spyOn(shop, 'people', 'get')
    .mockReturnValue([{ id: 'otis', badge: 'P-OTIS', name: 'Otis' }]);
  person.signOff();
  station.scan('P-OTIS');
  expect(person.badge).toBe('P-OTIS');
  station.scan('P-STRAY');
  expect([station.stranger, person.badge]).toEqual(['P-STRAY', 'P-OTIS']);
  station.signOn('P-STRAY');
  expect([station.stranger, person.badge]).toEqual([null, 'P-STRAY']);
  station.scan('P-OTIS');
  station.scan('P-STRAY');
  expect([station.stranger, person.badge]).toEqual([null, 'P-STRAY']);
  people.mockReturnValue([]);
  station.scan('P-ANYBODY');
  expect([station.stranger, person.badge]).toEqual([null, 'P-ANYBODY']);
});

test('what is typed is told right or wrong before it is taken', () => {
  const { code } = part('stile-left');
  expect(wrongTyped(code)).toBeNull();
  expect(wrongTyped(` ${code.toLowerCase()}`)).toBeNull();
  expect(wrongTyped('P-WREN')).toBeNull();
  expect(wrongTyped('AAAAAAAAAA')).toContain('A character is wrong');
  expect(wrongTyped(code.slice(0, 9))).toContain('ten letters and digits');
  expect(wrongTyped('P-?')).toContain('not a badge');
});

test('what a part cannot do here is said with its own name and its door’s', () => {
  const station = new Station('mortiser');
  station.scan(part('stile-left').code);
  expect(station.message?.text).toBe('Left stile of BENCH-1 is not ready for the mortiser.');
  const other = new Station('spindle-sander');
  other.scan(part('stile-left').code);
  expect(other.message?.text).toBe('Left stile of BENCH-1 is not worked at the spindle sander.');
});

test('what is done to a whole door is said of the door', async () => {
  allPartsDone();
  const station = new Station('assembly');
  for (const { code } of parts()) station.scan(code);
  await station.done();
  expect(station.last?.text).toMatch(/^Door BENCH-1\. Dry-fit the door: done/);
});

/** Everything of a part before one of its stages. */
function partDoneUntil({ code, stages }: PlanPart, until: string): void {
  for (const { stage, station } of stages) {
    if (stage === until) return;
    mark({ id: `${code} ${stage}`, code, station, stage, mark: 'done', at: '2026-11-26T08:00:00Z' });
  }
}

test('at the mortiser a scan of the same part steps to the place not shown yet; only at the last it marks done', async () => {
  const stile = part('stile-left');
  partDoneUntil(stile, 'mortise');
  const station = new Station('mortiser');
  station.scan(stile.code);
  expect(station.setup).toMatchObject({ place: 'bottom', seen: ['bottom'] });
  await vi.advanceTimersByTimeAsync(700);
  station.scan(stile.code);
  expect(station.setup?.place).toBe('bottom');
  await vi.advanceTimersByTimeAsync(200);
  station.scan(stile.code);
  expect(station.setup).toMatchObject({ place: 'top', seen: ['bottom', 'top'] });
  // Not within 800 ms of the place that has just come up either.
  await vi.advanceTimersByTimeAsync(700);
  station.scan(stile.code);
  await settled();
  expect(doneStages()).toEqual([]);
  await vi.advanceTimersByTimeAsync(200);
  station.scan(stile.code);
  await settled();
  expect(doneStages()).toEqual(['mortise']);
});

test('two quick taps on Done step to the second strip and do not mark it; a place that was tapped counts as shown', async () => {
  const stile = part('stile-left');
  partDoneUntil(stile, 'strip');
  const station = new Station('table-saw');
  station.scan(stile.code);
  await station.done();
  await station.done();
  expect(station.setup?.place).toBe('top');
  expect(doneStages()).toEqual([]);
  await vi.advanceTimersByTimeAsync(900);
  await station.done();
  expect(doneStages()).toEqual(['strip']);
  const other = part('stile-right');
  partDoneUntil(other, 'strip');
  station.scan(other.code);
  station.choose('top');
  await station.done();
  expect(doneStages()).toEqual(['strip', 'strip']);
});

test('what is missing is said with the station where it is done, not the one where it was scanned', () => {
  allPartsDone();
  const panel = part('panel');
  mark({
    id: 'undone',
    code: panel.code,
    station: 'bench',
    stage: 'finish',
    mark: 'undo',
    at: '2026-11-26T09:00:00Z',
  });
  mark({
    id: 'dry',
    code: panel.code,
    station: 'assembly',
    stage: 'dryfit',
    mark: 'done',
    at: '2026-11-26T09:01:00Z',
  });
  const station = new Station('assembly');
  station.scan(part('stile-left').code);
  expect(station.message?.next).toBe('First: Panel (Finish the panel), at the bench.');
  const early = new Station('mortiser');
  early.scan(plan.doors[1]?.parts[0]?.code ?? '');
  expect(early.message?.next).toBe('First: Mill to size, at milling.');
});

test('a setup whose blank is given up at another screen is put away and says what takes its place', async () => {
  const station = new Station('milling');
  const { code } = part('rail-bottom');
  station.scan(code);
  mark({
    id: 'elsewhere',
    code,
    station: 'milling',
    stage: 'mill',
    mark: 'spoiled',
    at: '2026-11-26T08:00:00Z',
  });
  station.check(live.jobs);
  expect(station.setup).toBeNull();
  expect(station.message).toMatchObject({ code: 'spoiled', banner: false });
  expect(station.message?.next).toContain('7K2Q4MX8BD');
});

test('a blank that is given up here is told as given up once, whichever comes first, the answer or the event', async () => {
  const station = new Station('milling');
  station.scan(part('rail-bottom').code);
  const spoiled = station.spoil('Split or torn out');
  station.check(live.jobs);
  expect(station.message).toBeNull();
  await spoiled;
  station.check(live.jobs);
  expect(station.message?.code).toBe('replacement');
});

test('a code typed with O for 0 and I for 1 is taken by the pad and shows that part', () => {
  const code = parts()
    .concat(plan.doors[1]?.parts ?? [])
    .map((each) => each.code)
    .find((each) => /[01]/.test(each.slice(0, 9)));
  if (code === undefined) throw new Error('no code with a 0 or 1 in this job');
  const typed = code.slice(0, 9).replace(/0/g, 'o').replace(/1/g, 'i') + code.slice(9);
  expect(wrongTyped(typed)).toBeNull();
  const station = new Station('milling');
  station.scan(typed);
  expect(station.setup?.code).toBe(code);
});
