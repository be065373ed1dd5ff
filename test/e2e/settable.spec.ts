import { expect, type Page, test } from '@playwright/test';
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plan, PlanPart } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { failOnErrors } from './quiet.ts';
import { addJob, doneUntil, keep, scan } from './shop-floor.ts';

/** Odd sizes: stock 25/32 thick, an opening and stiles that are no sixteenths; in millimetres tenths that are no halves. */
const JOBS: Readonly<Record<Units, object>> = {
  in: {
    opening: { width: '14 49/64', height: '42 33/64' },
    thickness: '25/32',
    stile: { width: '2 17/64' },
    bottomRail: { width: '2 51/64' },
    tenon: { length: '1 9/32', outerSetback: '3/8', innerSetback: '1/4', haunchClearance: '1/32' },
    arch: { rise: '1 3/4', flat: '3/4' },
    midRails: [{ width: '2 33/64', centre: '12' }],
  },
  mm: { opening: { width: '375.3', height: '1080.7' }, thickness: '19.25', stile: { width: '57.2' } },
};

let hub: HubProcess;
const plans = new Map<Units, Plan>();
const data = freshData();

test.describe.configure({ mode: 'serial', timeout: 300_000 });
failOnErrors();
test.beforeAll(async () => {
  hub = await startHubProcess(data, 0, []);
  for (const units of ['in', 'mm'] as const) {
    const file = {
      format: 1,
      job: `Odd ${units}`,
      units,
      doors: [{ mark: units === 'in' ? 'ODD' : 'MM', ...JOBS[units] }],
    };
    const id = await addJob(hub, file);
    plans.set(units, (await (await fetch(`${hub.url}/api/jobs/${id}`)).json()) as Plan);
  }
});
test.afterAll(async () => {
  await hub.end('SIGTERM');
  removeData(data);
});

/** The shop says how fine its machines are set. */
async function setTo(rounding: object): Promise<void> {
  const address = `${hub.url}/api/shop`;
  const { revision, ...shop } = (await (await fetch(address)).json()) as { revision: number };
  const saved = await fetch(address, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ revision, shop: { ...shop, rounding } }),
  });
  expect(saved.status).toBe(200);
}

function partOf(units: Units, name: string): PlanPart {
  const part = plans.get(units)?.doors[0]?.parts.find((each) => each.part === name);
  if (part === undefined) throw new Error(name);
  return part;
}

async function open(page: Page, part: PlanPart, stage: string): Promise<void> {
  const found = part.stages.find((each) => each.stage === stage);
  if (found === undefined) throw new Error(stage);
  await doneUntil(hub, part, stage);
  await page.goto(`${hub.url}/station/${found.station}`);
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
  await scan(page, part.code);
  await expect(page.locator(`main[data-code="${part.code}"]`)).toHaveAttribute('data-stage', stage);
}

const cell = (page: Page, name: string, place?: string) =>
  page.locator(`[data-setting="${name}"]${place === undefined ? '' : `[data-place="${place}"]`}`);
/** A setting as it is read, by ears or eyes. */
const reads = (page: Page, name: string, place?: string) =>
  cell(page, name, place).locator('button .hidden').first();

test('set-ups at 1/16 show the numbers that a machine is set to, so that rails still meet, and keep the exact one behind the tap', async ({
  page,
}) => {
  await setTo({ denominator: 16, places: 1 });
  const rail = partOf('in', 'rail-bottom');
  // S 10 39/64 is 10 5/8, the tenon 1 9/32 is 1 5/16: 13 1/4, where 13 11/64 to the nearest would be 13 3/16.
  await open(page, rail, 'mill');
  await expect(cell(page, 'length')).toHaveAttribute('data-value', '13 11/64');
  await expect(reads(page, 'length')).toHaveText('13 1/4');
  await expect(page.locator('main .size')).toContainText('13 1/4');
  await keep(page, 'settable-mill');
  await open(page, rail, 'shoulder');
  await expect(reads(page, 'stop')).toHaveText('1 5/16');
  await expect(reads(page, 'height')).toHaveText('17/64');
  await keep(page, 'settable-shoulder');
  await cell(page, 'stop').getByRole('button').click();
  await expect(page.locator('.why .exact')).toHaveText('exactly 1 9/32 in; 1/32 in rounded away');
  await keep(page, 'settable-why');
  await page.keyboard.press('Escape');
  await open(page, rail, 'mitre');
  // The line at 1 5/16 + 3/16, set 1/64 nearer the end.
  await expect(reads(page, 'sightEdge')).toHaveText('1 31/64');
  await expect(cell(page, 'sightEdge')).toContainText('line at');
  await expect(cell(page, 'sightEdge').locator('.line .hidden')).toHaveText('1 1/2');
  const stile = partOf('in', 'stile-left');
  for (const stage of ['bead', 'groove', 'mortise', 'mitre-mid-1-lower', 'strip'])
    if (stile.stages.some((each) => each.stage === stage)) {
      await open(page, stile, stage);
      await expect(
        page.locator('main [data-setting] .hidden', { hasText: '≈' }).filter({ hasNotText: '.' }),
      ).toHaveCount(stage === 'strip' ? 2 : 0);
      await keep(page, `settable-${stage}`);
    }
  const top = partOf('in', 'rail-top');
  for (const stage of ['arch', 'smooth', 'slot']) {
    await open(page, top, stage);
    await keep(page, `settable-${stage}`);
  }
});

test('the same set-up read in millimetres is settable there, by the exact values; decimal inches to a thousandth', async ({
  page,
}) => {
  await setTo({ denominator: 16, places: 1, half: true });
  await open(page, partOf('in', 'rail-mid-1'), 'shoulder');
  const next = page.locator('[data-action="measure"]');
  await next.click();
  // 1 9/32 in is 32.54 mm; a wall of 17/64 in is 6.746875 mm, down to 6.7.
  await expect(reads(page, 'stop')).toHaveText('32.5');
  await expect(reads(page, 'height')).toHaveText('6.7');
  await expect(cell(page, 'stop')).toHaveAttribute('data-value', '1 9/32');
  await cell(page, 'stop').getByRole('button').click();
  await expect(page.locator('.why .exact')).toHaveText('exactly 1 9/32 in; ≈ 0.044 mm rounded away');
  await keep(page, 'settable-why-mm');
  await page.keyboard.press('Escape');
  await next.click();
  await expect(reads(page, 'stop')).toHaveText('1.281');
  await expect(reads(page, 'height')).toHaveText('0.265');
});

test('a job in millimetres is set to halves where the shop says so, its fences to tenths', async ({
  page,
}) => {
  await setTo({ denominator: 16, places: 1, half: true });
  const rail = partOf('mm', 'rail-top');
  await open(page, rail, 'mill');
  await expect(reads(page, 'length')).toHaveText('335');
  await expect(reads(page, 'thickness')).toHaveText('19.3');
  await open(page, rail, 'groove');
  await expect(reads(page, 'fence')).toHaveText('6.6');
  await keep(page, 'settable-groove-mm');
});

test('a haunch that comes out thicker than its slot says how thick it is pared, in the measure that is read', async ({
  page,
}) => {
  await setTo({ denominator: 64, places: 1 });
  const id = await addJob(hub, {
    format: 1,
    job: 'Router',
    units: 'in',
    ways: { groove: 'router' },
    doors: [{ mark: 'SLOT', opening: { width: '14 3/4', height: '22 1/2' }, thickness: '49/64' }],
  });
  const plan = (await (await fetch(`${hub.url}/api/jobs/${id}`)).json()) as Plan;
  const rail = plan.doors[0]?.parts.find(({ part }) => part === 'rail-bottom');
  if (rail === undefined) throw new Error('no rail');
  await open(page, rail, 'cheek');
  await expect(page.locator('[data-pare-to]')).toHaveCount(0);
  await open(page, rail, 'haunch');
  const told = page.locator('[data-pare-to]');
  await expect(told).toHaveText('Pare the back of the haunch to 1/4 in thick, as wide as its groove.');
  await keep(page, 'settable-haunch');
  await page.locator('[data-action="measure"]').click();
  // 6.35 mm, down to what is set.
  await expect(told).toHaveText('Pare the back of the haunch to 6.3 mm thick, as wide as its groove.');
});

test('what waits at a station is told in the same numbers', async ({ page }) => {
  await setTo({ denominator: 16, places: 1 });
  await page.goto(`${hub.url}/station/milling`);
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
  await expect(page.locator('[data-group] .set .hidden').filter({ hasText: '≈' })).toHaveCount(0);
  await expect(page.locator('[data-group] .set').filter({ hasText: '2 1/4' }).first()).toBeVisible();
  await keep(page, 'settable-queue');
});

test('the command prints the settable plan, and refuses a step that is none of the job’s units', () => {
  const file = join(data, 'odd.json');
  writeFileSync(
    file,
    JSON.stringify({ format: 1, job: 'Odd', units: 'in', doors: [{ mark: 'ODD', ...JOBS.in }] }),
  );
  const plan = (...more: string[]) =>
    spawnSync(process.execPath, [join(import.meta.dirname, '../../dist/hub/plan.js'), file, ...more], {
      encoding: 'utf8',
    });
  const printed = plan('--settable', '1/16', '--why');
  expect(printed.status).toBe(0);
  const [door] = (JSON.parse(printed.stdout) as Plan).doors;
  const rail = door?.parts.find(({ part }) => part === 'rail-bottom');
  expect(rail?.length).toBe('13 1/4');
  // The reason stays that of the exact value.
  expect(rail?.stages[0]?.why?.length?.reason).toMatch(/= 13\s11\/64$/);
  const refused = plan('--settable', '0.5');
  expect(refused.status).toBe(2);
  expect(refused.stdout).toBe('');
  expect(refused.stderr.trim()).toBe('plan: --settable 0.5: expected 1/16, 1/32, 1/64 (in)');
});
