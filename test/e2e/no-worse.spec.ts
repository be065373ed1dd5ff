import { expect, type Page, test } from '@playwright/test';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isSet } from '#core/plan/set-or-follows.ts';
import type { Plan, PlanPart, PlanStage } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';
import { everyStageJob } from './every-stage-job.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { failOnErrors } from './quiet.ts';
import { figuresOf, type SetupFigures, type SetupRecord, type SetupTable, SIZES } from './setup-figures.ts';
import { addJob, doneUntil, scan } from './shop-floor.ts';

/** As the setups were when they were measured first. RECORD_SETUPS=1 writes it anew: only when more is shown larger with fewer taps. */
const RECORDED = join(import.meta.dirname, 'setups-as-recorded.json');
/** What only follows is small, but never smaller than this. */
const LEAST_FOLLOWING = 17;
/** Stages with few numbers, which have the room to show them nearly twice as high as they were recorded. */
const FEW_NUMBERS = ['mill', 'bead', 'slot', 'raise', 'smooth', 'groove', 'pare'];
const MOST_TAPS = 12;

let hub: HubProcess;
const plans = new Map<Units, Plan>();
const data = freshData();
const measured: Record<Units, Record<string, SetupRecord>> = { in: {}, mm: {} };

test.describe.configure({ mode: 'serial', timeout: 300_000 });
failOnErrors();
test.beforeAll(async () => {
  hub = await startHubProcess(data, 0, []);
  for (const units of ['in', 'mm'] as const) {
    const id = await addJob(hub, everyStageJob(units));
    plans.set(units, (await (await fetch(`${hub.url}/api/jobs/${id}`)).json()) as Plan);
  }
});
test.afterAll(async () => {
  await hub.end('SIGTERM');
  removeData(data);
});

/** Measures the setup that is on the screen at both sizes, then taps Done until it is marked. */
async function measureSetup(page: Page, { stage }: PlanStage): Promise<SetupRecord> {
  const shown = page.locator(`main[data-stage="${stage}"][data-code]`);
  await expect(shown).toBeVisible();
  const at: Record<string, SetupFigures> = {};
  for (const size of SIZES) {
    await page.setViewportSize(size);
    await page.evaluate(() => new Promise((painted) => requestAnimationFrame(() => setTimeout(painted, 30))));
    at[String(size.width)] = await figuresOf(page);
  }
  let taps = 0;
  while ((await shown.count()) > 0 && taps < MOST_TAPS) {
    const places = await page
      .locator('[data-places]')
      .getAttribute('data-places', { timeout: 100 })
      .catch(() => null);
    await page.click('[data-action="done"]');
    taps += 1;
    await expect
      .poll(async () =>
        (await shown.count()) === 0
          ? 'marked'
          : page
              .locator('[data-places]')
              .getAttribute('data-places', { timeout: 100 })
              .catch(() => null),
      )
      .not.toBe(places);
  }
  return { taps, at };
}

async function open(page: Page, station: string): Promise<void> {
  await page.setViewportSize(SIZES[0]);
  await page.goto(`${hub.url}/station/${station}`);
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
}

function recorded(): SetupTable {
  return JSON.parse(readFileSync(RECORDED, 'utf8')) as SetupTable;
}

for (const units of ['in', 'mm'] as const)
  test.describe(
    units === 'in' ? 'in inches' : 'in millimetres',
    { tag: units === 'in' ? [] : '@proof' },
    () => {
      test('every setup is walked from its scan to its mark', async ({ page }) => {
        const door = plans.get(units)?.doors[0];
        if (door === undefined) throw new Error('no door');
        const found = measured[units];
        const panelsLast = (part: PlanPart) => (part.part.startsWith('panel') ? 1 : 0);
        for (const part of door.parts.toSorted((a, b) => panelsLast(a) - panelsLast(b)))
          for (const stage of part.stages) {
            const name = stage.stage;
            if (Object.hasOwn(found, name)) continue;
            await doneUntil(hub, part, name);
            await open(page, stage.station);
            await scan(page, part.code);
            found[name] = await measureSetup(page, stage);
          }
        for (const part of door.parts) await doneUntil(hub, part, 'none');
        for (const stage of door.stages) {
          if (stage.stage !== 'glue') await open(page, stage.station);
          if (stage.stage === 'dryfit') for (const { code } of door.parts) await scan(page, code);
          if (stage.stage === 'trim') await scan(page, door.parts[0]?.code ?? '');
          found[stage.stage] = await measureSetup(page, stage);
        }
        expect(Object.keys(found).length).toBeGreaterThan(24);
      });

      test('no numeral that is set is smaller, no setup takes a tap more or shows more words than when they were recorded', () => {
        if (process.env.RECORD_SETUPS !== undefined)
          writeFileSync(
            RECORDED,
            `${JSON.stringify({ ...recorded(), [units]: measured[units] }, null, 2)}\n`,
          );
        const worse: string[] = [];
        for (const [stage, before] of Object.entries(recorded()[units])) {
          const now = measured[units][stage];
          if (now === undefined) {
            worse.push(`${stage}: not shown`);
            continue;
          }
          if (now.taps > before.taps) worse.push(`${stage}: ${now.taps} taps, ${before.taps} before`);
          for (const [width, { heights, words }] of Object.entries(before.at)) {
            const shown = now.at[width];
            if ((shown?.words ?? Infinity) > words)
              worse.push(`${stage} at ${width}: ${shown?.words ?? ''} words, ${words} before`);
            for (const [key, height] of Object.entries(heights)) {
              const least = isSet(stage, key.split('@')[0] ?? '') ? height : LEAST_FOLLOWING;
              if ((shown?.heights[key] ?? 0) < least)
                worse.push(
                  `${stage} at ${width}: ${key} is ${shown?.heights[key] ?? 0} px high, not ${least}`,
                );
            }
          }
        }
        expect(worse).toEqual([]);
      });

      test('where few numbers are set they stand nearly twice as high as they were recorded, or higher', () => {
        const low: string[] = [];
        for (const stage of FEW_NUMBERS)
          for (const [width, { heights }] of Object.entries(recorded()[units][stage]?.at ?? {}))
            for (const [key, height] of Object.entries(heights)) {
              const now = measured[units][stage]?.at[width]?.heights[key] ?? 0;
              if (isSet(stage, key) && now < height * 1.9)
                low.push(`${stage} at ${width}: ${key} is ${now} px high, ${height} before`);
            }
        expect(low).toEqual([]);
      });
    },
  );
