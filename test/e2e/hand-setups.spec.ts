import { expect, type Page, test } from '@playwright/test';
import type { Plan } from '#core/plan/plan.ts';
import { everyStageJob } from './every-stage-job.ts';
import { HAND_SIZES, handFaults } from './hand-faults.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { failOnErrors } from './quiet.ts';
import { addedPlan, doneUntil, scan } from './shop-floor.ts';

let hub: HubProcess;
const data = freshData();
/** In which languages the setups of a job in these units are walked. */
const WALKS = { in: ['en', 'de', 'pseudo'], mm: ['de'] } as const;

test.describe.configure({ timeout: 900_000 });
failOnErrors();
test.beforeAll(async () => {
  hub = await startHubProcess(data, 0, []);
});
test.afterAll(async () => {
  await hub.end('SIGTERM');
  removeData(data);
});

const painted = (page: Page) =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 50))));

/** A stage, the station that it is done at, and what is scanned until its setup is shown. */
interface Shown {
  readonly stage: string;
  readonly station: string;
  readonly codes: readonly string[];
}

async function look(page: Page, { stage, station, codes }: Shown, language: string): Promise<string[]> {
  const found: string[] = [];
  await page.goto(`${hub.url}/station/${station}?language=${language}`);
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
  for (const code of codes) await scan(page, code);
  await expect(page.locator(`main[data-stage="${stage}"]:not([data-gathering])`)).toBeVisible();
  for (const size of HAND_SIZES) {
    await page.setViewportSize(size);
    await painted(page);
    // How far a drawing's own words may be stretched is held by its own tests.
    const faults = (await handFaults(page)).filter(
      (fault) => language !== 'pseudo' || !/^cut (svg|div\.drawing)/.test(fault),
    );
    found.push(...faults.map((fault) => `${stage} ${language} at ${size.width} × ${size.height}: ${fault}`));
    if (process.env.KEEP_WALK !== undefined)
      await page.screenshot({ path: `${process.env.KEEP_WALK}/hand-${stage}-${language}-${size.width}.png` });
  }
  return found;
}

for (const units of ['in', 'mm'] as const)
  test(
    `in a job in ${units === 'in' ? 'inches' : 'millimeters'} no setup has a fault at any size of a phone or a tablet, in any language`,
    { tag: '@proof' },
    async ({ page }) => {
      const plan: Plan = await addedPlan(hub, everyStageJob(units));
      const [door] = plan.doors;
      if (door === undefined) throw new Error('no door');
      const found: string[] = [];
      const seen = new Set<string>();
      const lookAt = async (shown: Shown) => {
        seen.add(shown.stage);
        for (const language of WALKS[units]) found.push(...(await look(page, shown, language)));
      };
      for (const part of door.parts)
        for (const { stage, station } of part.stages) {
          if (seen.has(stage)) continue;
          await doneUntil(hub, part, stage);
          await lookAt({ stage, station, codes: [part.code] });
        }
      for (const part of door.parts) await doneUntil(hub, part, 'none');
      const codes = door.parts.map(({ code }) => code);
      for (const own of door.stages) {
        await lookAt({ ...own, codes: own.stage === 'dryfit' ? codes : codes.slice(0, 1) });
        await doneUntil(hub, { code: codes[0] ?? '', stages: [own] }, 'none');
      }
      expect(seen.size).toBeGreaterThan(24);
      expect(found).toEqual([]);
    },
  );

for (const size of [...HAND_SIZES, { width: 1280, height: 800 }])
  test(
    `numerals that are calibrated to be read from far stay on a screen of ${size.width} × ${size.height}, above Done`,
    { tag: '@proof' },
    async ({ page }) => {
      const plan = await addedPlan(hub, { ...(everyStageJob('mm') as object), job: `Far ${size.width}` });
      await page.setViewportSize(size);
      const found: string[] = [];
      for (const { code, stages } of plan.doors[0]?.parts ?? [])
        for (const { stage, station } of stages.filter((each) => /^(mill|mortise|arch)$/.test(each.stage))) {
          await doneUntil(hub, { code, stages }, stage);
          await page.goto(`${hub.url}/station/${station}`);
          await expect(page.locator('[data-loaded="true"]')).toBeVisible();
          await page.evaluate(() => document.documentElement.style.setProperty('--numeral', '150px'));
          await scan(page, code);
          await expect(page.locator(`main[data-stage="${stage}"]`)).toBeVisible();
          await painted(page);
          found.push(...(await handFaults(page)).map((fault) => `${stage}: ${fault}`));
        }
      expect(found).toEqual([]);
    },
  );
