import { describe, expect, onTestFinished, test } from 'vitest';
import { until } from '../../e2e/kiosk-process.ts';
import { CHROMIUM } from './chromium.ts';
import type { Engine, EngineKind } from './engine.ts';
import { FIREFOX } from './firefox.ts';
import { loudPage } from './loud-page.ts';
import { workedThrough } from './scenario.ts';
import { type Shop, shopHere, shopOverNetwork } from './shop.ts';
import { WEBKIT } from './webkit.ts';

async function started(kind: EngineKind, authority: string | null): Promise<Engine> {
  const lacking = kind.lacking();
  expect(
    lacking,
    `${kind.name} cannot be proved here: apt-get install -y --no-install-recommends ${lacking.join(' ')}`,
  ).toEqual([]);
  return kind.start(authority);
}

async function inShop(kind: EngineKind, open: () => Promise<Shop>): Promise<void> {
  const shop = await open();
  onTestFinished(() => shop.stop());
  const engine = await started(kind, shop.authority);
  const how = shop.authority === null ? 'here' : 'network';
  for (const { away, back } of await workedThrough(engine, shop, `${kind.name.toLowerCase()}-${how}`))
    console.log(`${kind.name}, ${how}: away after ${Math.round(away)} ms, back after ${Math.round(back)} ms`);
  expect(await engine.complaints()).toEqual([]);
}

describe.each([CHROMIUM, WEBKIT, FIREFOX])('$name', (kind) => {
  test('is heard where a page says an error or a warning, throws, or tries what its policy forbids', async () => {
    const address = await loudPage();
    const engine = await started(kind, null);
    await engine.open(address);
    await engine.click('button');
    for (const said of [/an error/, /a warning/, /an exception/, /Content.Security.Policy|forbidden by/i])
      await until(String(said), async () => (await engine.complaints()).find((each) => said.test(each)), 5);
  });

  test('at the hub’s own machine scan, set-up, Done, board, away and back go as they are to, and its console stays clean', () =>
    inShop(kind, shopHere));

  test('over the shop’s network it trusts the authority that it was given, is paired by the code, and all goes as at the hub’s own machine', () =>
    inShop(kind, shopOverNetwork));
});
