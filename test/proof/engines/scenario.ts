import { expect } from 'vitest';
import { boardAnswer } from '#core/api/marks-api.ts';
import type { PlanDoor, PlanPart } from '#core/plan/plan.ts';
import { until } from '../../e2e/kiosk-process.ts';
import { doneUntil, onlyPlan, post } from '../../e2e/shop-floor.ts';
import { marked, setUp, STATION, stageOf, timesMarked } from './at-station.ts';
import type { Engine } from './engine.ts';
import { pictured } from './pictured.ts';
import type { Shop } from './shop.ts';

const AWAY = '[data-message="hub-away"]';
/** A screen says so within this that the hub is away. */
const AWAY_MS = 3000;
/** Whoever sends a mark twice has done so by then. */
const TWICE_MS = 3000;

/** How long it was until the screen said that the hub is away, and that it is back, in milliseconds. */
export interface Noticed {
  readonly away: number;
  readonly back: number;
}

/** One person before one engine, from the pairing to marks made while the hub was away. Fails where anything is not as it is to be. */
export async function workedThrough(engine: Engine, shop: Shop, name: string): Promise<readonly Noticed[]> {
  const { doors } = await onlyPlan(shop);
  const [here, away, awayAnew] = doors.flatMap(({ parts }) =>
    parts.filter(({ part }) => part.startsWith('stile')),
  );
  const untouched = doors[2];
  if (here === undefined || away === undefined || awayAnew === undefined || untouched === undefined)
    throw new Error('the demo has three doors, each with two stiles');
  for (const each of [here, away, awayAnew]) await doneUntil(shop, each, stageOf(each).stage);

  const code = await shop.code();
  await engine.open(`${shop.screens}/station/${STATION}`);
  if (code !== null) await pairs(engine, code);
  await until('the station', async () => (await engine.see('[data-loaded="true"]'))[0]);
  await pictured(engine, `${name}-station`);
  await setUp(engine, here, `${name}-setup`);
  await marked(engine, here);
  expect(await timesMarked(shop, here), 'the mark at the hub').toBe(1);

  await holdsBoard(engine, shop, untouched, `${name}-board`);

  await engine.open(`${shop.screens}/station/${STATION}`);
  await until('the station', async () => (await engine.see('[data-loaded="true"]'))[0]);
  const noticed = [
    await marksWhileAway(engine, shop, away, { anew: false, name: `${name}-away` }),
    await marksWhileAway(engine, shop, awayAnew, { anew: true, name: `${name}-away-anew` }),
  ];
  expect(await timesMarked(shop, here)).toBe(1);
  expect(await timesMarked(shop, away)).toBe(1);
  return noticed;
}

/** Is paired by a code, and comes to its station. */
async function pairs(engine: Engine, code: string): Promise<void> {
  await until('the form', async () => (await engine.see('[name="code"]'))[0]);
  await engine.fill('[name="code"]', code);
  await engine.fill('[name="name"]', 'Tablet');
  await engine.click(`[data-choose-station="${STATION}"]`);
  await engine.click('[data-action="pair"]');
  await until('the station', async () => (await engine.address()).endsWith(`/station/${STATION}`) || null);
}

/** The board shows every door where the hub has it, and hears of what is done meanwhile. */
async function holdsBoard(engine: Engine, shop: Shop, door: PlanDoor, name: string): Promise<void> {
  const shown = async () =>
    new Map(
      (await engine.see('[data-door]')).map(({ attributes }) => [
        attributes['data-door'] ?? '',
        attributes['data-reached'] ?? '',
      ]),
    );
  await engine.open(`${shop.screens}/board`);
  await until('the board', async () => (await shown()).size > 0 || null);
  await pictured(engine, name);
  const told = boardAnswer.parse(await (await fetch(`${shop.url}/api/board`)).json()).doors;
  const before = await shown();
  for (const [row, reached] of before)
    expect(reached, row).toBe(told.find((each) => each.door === row)?.stage);
  for (const { code, stages } of door.parts)
    await post(shop, code, stages[0]?.station ?? '', stages[0]?.stage ?? '');
  await until('what was done meanwhile', async () => {
    const reached = (await shown()).get(door.door);
    return (reached !== undefined && reached !== before.get(door.door)) || null;
  });
}

/** The hub is cut off, a part is marked, the page perhaps loaded anew, and the hub comes back: the mark reaches it once. */
async function marksWhileAway(
  engine: Engine,
  shop: Shop,
  part: PlanPart,
  { anew, name }: { readonly anew: boolean; readonly name: string },
): Promise<Noticed> {
  const cut = performance.now();
  await shop.cut();
  await until('the word that the hub is away', async () => (await engine.see(AWAY))[0]);
  const away = performance.now() - cut;
  expect(away).toBeLessThan(AWAY_MS);
  await setUp(engine, part, name);
  await marked(engine, part);
  const kept = async () => (await engine.see(AWAY))[0]?.attributes['data-kept'] === '1' || null;
  await until('the mark kept', kept);
  if (anew) {
    await engine.open(`${shop.screens}/station/${STATION}`);
    await until('the mark kept by the page that was loaded anew', kept);
  }
  await shop.again();
  const started = performance.now();
  await until('the hub back', async () => (await engine.see(AWAY)).length === 0 || null);
  const back = performance.now() - started;
  await until('the mark sent', async () => (await timesMarked(shop, part)) > 0 || null);
  await new Promise((over) => setTimeout(over, TWICE_MS));
  expect(await timesMarked(shop, part), 'a mark made while the hub was away').toBe(1);
  expect(await engine.see('[data-decide]'), 'marks that the hub refused').toEqual([]);
  return { away, back };
}
