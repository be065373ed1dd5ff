import { expect, type Page, test } from '@playwright/test';
import { leftToPare } from '#core/plan/left-to-pare.ts';
import { isOfPiece } from '#core/plan/set-or-follows.ts';
import type { Plan, PlanStage } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';
import { clippedOn } from './clipped.ts';
import { everyStageJob } from './every-stage-job.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { failOnErrors } from './quiet.ts';
import { addJob, doneUntil, faultsOf, scan } from './shop-floor.ts';

let hub: HubProcess;
const plans = new Map<Units, Plan>();
const data = freshData();

test.describe.configure({ timeout: 300_000 });
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

/** What a look at a setup finds: words cut, targets too small, or a number that is not what is to be set there. */
async function look(page: Page, stage: PlanStage, units: Units, name: string): Promise<string[]> {
  const found: string[] = [];
  for (const width of [1280, 1920]) {
    await page.setViewportSize({ width, height: width === 1280 ? 800 : 1080 });
    await page.evaluate(() => new Promise((painted) => requestAnimationFrame(() => setTimeout(painted, 20))));
    const faults = [...(await clippedOn(page)), ...(await faultsOf(page, false))].filter(
      // Drawings are held by their own tests.
      (fault) => !/^cut (svg|div\.drawing)/.test(fault),
    );
    found.push(...faults.map((fault) => `${name} at ${width}: ${fault}`));
    const under = await page.evaluate(() => {
      const done = document.querySelector('[data-action="done"]')?.getBoundingClientRect().top ?? 0;
      return [...document.querySelectorAll<HTMLElement>('[data-setting]')]
        .filter((cell) => cell.getBoundingClientRect().bottom > done + 1)
        .map((cell) => `under Done: ${cell.dataset.setting ?? ''} ${cell.dataset.place ?? ''}`);
    });
    found.push(...under.map((fault) => `${name} at ${width}: ${fault}`));
    if (process.env.KEEP_WALK !== undefined)
      await page.screenshot({ path: `${process.env.KEEP_WALK}/setup-${units}-${name}-${width}.png` });
  }
  for (const { at, settings } of [{ at: null, settings: stage.settings }, ...(stage.places ?? [])])
    for (const [setting, value] of Object.entries(settings)) {
      // How the piece lies is shown for the place that is worked on alone: the first.
      if (isOfPiece(stage.stage, setting) && at !== stage.places?.[0]?.at) continue;
      const cell = page.locator(
        `[data-setting="${setting}"]${at === null ? ':not([data-place])' : `[data-place="${at}"]`}`,
      );
      await expect(cell).toHaveAttribute('data-value', String(value));
      const pare = leftToPare(stage.stage, setting, value, units);
      expect(await cell.getAttribute('data-set'), `${name} ${setting}`).toBe(pare?.set ?? null);
      if (pare !== null) await expect(cell).toContainText(/l[iï]n[eë]+ [aå]+t/);
    }
  return found;
}

for (const units of ['in', 'mm'] as const)
  test(
    `in a job in ${units === 'in' ? 'inches' : 'millimetres'} every setup shows what to set, in a longer language too, with no word cut and each target large enough`,
    { tag: '@proof' },
    async ({ page }) => {
      const door = plans.get(units)?.doors[0];
      const found: string[] = [];
      const seen = new Set<string>();
      await page.goto(`${hub.url}/station?language=pseudo`);
      for (const part of door?.parts ?? [])
        for (const stage of part.stages) {
          // The lower panel is under a foot long: each of its setups says so.
          const short = part.part === 'panel-1';
          const name = `${stage.stage}${short ? ' of a short part' : ''}`;
          if (seen.has(name)) continue;
          seen.add(name);
          await doneUntil(hub, part, stage.stage);
          await page.goto(`${hub.url}/station/${stage.station}`);
          await expect(page.locator('[data-loaded="true"]')).toBeVisible();
          await scan(page, part.code);
          await expect(page.locator(`main[data-code="${part.code}"]`)).toHaveAttribute(
            'data-stage',
            stage.stage,
          );
          await expect(page.locator('[data-caution="short-part"]')).toHaveCount(
            short && stage.station !== 'bench' ? 1 : 0,
          );
          found.push(...(await look(page, stage, units, name)));
        }
      expect(found).toEqual([]);
      expect([...seen]).toEqual(expect.arrayContaining(['strip', 'mitre', 'arch', 'notch-mid-1', 'finish']));
    },
  );

test('the reason of a number that is set beside its line says by how much, and why', async ({ page }) => {
  const rail = plans.get('in')?.doors[0]?.parts.find(({ part }) => part === 'rail-mid-1');
  if (rail === undefined) throw new Error('no mid rail');
  await doneUntil(hub, rail, 'mitre');
  await page.goto(`${hub.url}/station/table-saw`);
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
  await scan(page, rail.code);
  const cell = page.locator('[data-setting="sightEdge"]');
  await expect(cell).toHaveAttribute('data-set', '1 31/64');
  await expect(cell.getByRole('button')).toContainText('1 31/64');
  await expect(cell).toContainText('line at 1 1/2');
  await cell.getByRole('button').click();
  await expect(page.getByRole('dialog')).toContainText('tenon 1 1/4 + bead 1/4 = 1 1/2');
  await expect(page.locator('[data-pare="mitre"]')).toContainText('Set 1/64 nearer the end than the line');
});
