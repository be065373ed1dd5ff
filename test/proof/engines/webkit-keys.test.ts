import { setTimeout as pause } from 'node:timers/promises';
import { expect, onTestFinished, test } from 'vitest';
import { STATIONS } from '#core/stages/stations.ts';
import { until } from '../../e2e/kiosk-process.ts';
import { doneUntil, onlyPlan } from '../../e2e/shop-floor.ts';
import { STATION, stageOf, timesMarked } from './at-station.ts';
import { KeyedWebKit, SETTLED_MS } from './keyed-webkit.ts';
import { loudPage } from './loud-page.ts';
import { type Shop, shopHere, shopOverNetwork } from './shop.ts';

/**
 * The driver of WebKit tells nothing of a console, and nothing that a page says while it is loaded. So it is worked by keys
 * alone too; what came of them the hub knows.
 */
const PRESSED_MS = 900;

/** From a part's scan to its mark and, with the hub away, to another's. */
async function workedByKeys(browser: KeyedWebKit, shop: Shop): Promise<void> {
  const [first, second] =
    (await onlyPlan(shop)).doors[0]?.parts.filter(({ part }) => part.startsWith('stile')) ?? [];
  if (first === undefined || second === undefined) throw new Error('the demo has a door with two stiles');
  for (const each of [first, second]) await doneUntil(shop, each, stageOf(each).stage);
  await pause(SETTLED_MS / 2);
  await until('the mark', async () => {
    await scanAndDone(browser, first.code);
    return (await timesMarked(shop, first)) === 1 || null;
  });
  await shop.cut();
  await pause(SETTLED_MS);
  // Twice, as nothing says whether the first was seen: what is done already is not marked again.
  await scanAndDone(browser, second.code);
  await scanAndDone(browser, second.code);
  browser.picture('keys-away');
  await shop.again();
  await until(
    'the mark made while the hub was away',
    async () => (await timesMarked(shop, second)) > 0 || null,
  );
  await pause(SETTLED_MS);
  await browser.open(`${shop.screens}/board`);
  browser.picture('keys-board');
  expect([await timesMarked(shop, first), await timesMarked(shop, second)]).toEqual([1, 1]);
}

/** The set-up begins at Done: Enter leads from place to place, and marks at the last. */
async function scanAndDone(browser: KeyedWebKit, code: string): Promise<void> {
  await browser.scan(code);
  browser.picture('keys-setup');
  for (let place = 0; place < 2; place += 1) {
    await pause(PRESSED_MS);
    await browser.press('Return');
  }
  await pause(PRESSED_MS);
}

test('WebKit, worked by keys, is heard where a page says an error or a warning, or throws, as it is loaded', async () => {
  const browser = await KeyedWebKit.start(await loudPage(), null);
  for (const said of [/an error/, /a warning/, /an exception/])
    await until(String(said), () => browser.complaints().find((each) => said.test(each)), 5);
});

test('WebKit, worked by keys at the hub’s own machine, marks each part once, while the hub is away too, and its console stays clean', async () => {
  const shop = await shopHere();
  onTestFinished(() => shop.stop());
  const browser = await KeyedWebKit.start(`${shop.screens}/station/${STATION}`, null);
  await workedByKeys(browser, shop);
  expect(browser.complaints()).toEqual([]);
});

test('WebKit, worked by keys over the shop’s network, is paired, marks each part once, while the hub is away too, and its console stays clean', async () => {
  const shop = await shopOverNetwork();
  onTestFinished(() => shop.stop());
  const browser = await KeyedWebKit.start(`${shop.screens}/station/${STATION}`, shop.authority);
  await browser.press('Tab');
  browser.type((await shop.code()) ?? '');
  await browser.press('Tab');
  browser.type('Tablet');
  const tabs = STATIONS.indexOf(STATION) + 1;
  await browser.press(...Array<string>(tabs).fill('Tab'), 'space');
  await browser.press(...Array<string>(STATIONS.length - tabs + 1).fill('Tab'));
  browser.picture('keys-pairing');
  await browser.press('Return');
  await pause(SETTLED_MS);
  await workedByKeys(browser, shop);
  expect(browser.complaints()).toEqual([]);
});
