import { expect, type Page, test } from '@playwright/test';
import type { StationId } from '#core/stages/stations.ts';
import type { Plan, PlanDoor } from '#core/plan/plan.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { failOnErrors } from './quiet.ts';
import { addJob, doneUntil, keep, post, scan } from './shop-floor.ts';

/** Four arched doors, no two alike; the opening of the second was surveyed. */
const JOB = {
  format: 1,
  job: 'Chandlery',
  units: 'in',
  doors: [
    { width: '14', height: '24', rise: '1 3/4' },
    { width: '15', height: '26', rise: '2' },
    { width: '16', height: '28', rise: '2 1/4' },
    { width: '17', height: '30', rise: '2 1/2' },
  ].map(({ width, height, rise }, k) => ({
    mark: `C${k + 1}`,
    opening: { width, height },
    oversize: { width: `1/${8 * (k + 1)}`, height: '1/4' },
    arch: { rise, flat: '3/4' },
    ...(k === 1
      ? {
          survey: {
            widthBottom: '15',
            widthTop: '15',
            heightLeft: '26',
            heightRight: '26',
            diagonalUp: '30.016662',
            diagonalDown: '30.016662',
          },
        }
      : {}),
  })),
};

/** A part and the stage that brings it to each station, in the order in which one door meets them. */
const STOPS: readonly (readonly [StationId, part: string, stage: string])[] = [
  ['milling', 'rail-top', 'mill'],
  ['band-saw', 'rail-top', 'arch'],
  ['spindle-sander', 'rail-top', 'smooth'],
  ['router-table', 'rail-top', 'bead'],
  ['table-saw', 'rail-top', 'shoulder'],
  ['mortiser', 'stile-left', 'mortise'],
  ['bench', 'stile-left', 'pare'],
  ['assembly', 'panel', 'dryfit'],
  ['fitting', 'panel', 'trim'],
];

let hub: HubProcess;
let plan: Plan;
const data = freshData();

test.describe.configure({ mode: 'serial' });
failOnErrors();
test.beforeAll(async () => {
  hub = await startHubProcess(data, 0, []);
  const id = await addJob(hub, JOB);
  plan = (await (await fetch(`${hub.url}/api/jobs/${id}`)).json()) as Plan;
});
test.afterAll(async () => {
  await hub.end('SIGTERM');
  removeData(data);
});

/** Brings a door's part to a stage; a door's own stage needs all of its parts. */
async function bring(door: PlanDoor, name: string, stage: string): Promise<string> {
  const part = door.parts.find((each) => each.part === name);
  if (part === undefined) throw new Error(`no ${name} in ${door.door}`);
  const whole = door.stages.some((each) => each.stage === stage);
  for (const each of whole ? door.parts : [part]) await doneUntil(hub, each, stage);
  if (whole) await doneUntil(hub, { ...part, stages: door.stages }, stage);
  return part.code;
}

async function open(page: Page, station: string): Promise<void> {
  await page.goto(`${hub.url}/station/${station}`);
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
}

/** What the queue says in all waits, and what its groups and "and so many more" come to. */
async function counts(page: Page): Promise<{ all: number; shown: number; groups: number }> {
  return page.locator('section.waiting').evaluate((queue) => {
    const number = (text: string | null | undefined) => Number(/\d+/.exec(text ?? '')?.[0] ?? 0);
    const groups = [...queue.querySelectorAll<HTMLElement>('[data-group]')].filter(({ hidden }) => !hidden);
    return {
      all: number(queue.querySelector('h3')?.textContent),
      shown:
        groups.reduce((sum, { dataset }) => sum + Number(dataset.left), 0) +
        number(queue.querySelector('[data-action="show-queue"]')?.textContent),
      groups: groups.length,
    };
  });
}

/** Whether the first group names its whole set-up, only what changes, or that its door was surveyed. */
async function toldOf(page: Page): Promise<string> {
  const first = page.locator('[data-group="0"]');
  if ((await first.textContent())?.includes('by its own survey') === true) return 'surveyed';
  const told = first.locator('[data-set]');
  return (await told.count()) === 0 ? 'stands' : ((await told.getAttribute('data-set')) ?? '');
}

/** A machine with lines, one with places, and where whole doors wait; the others go the same way. */
const GUARDED: readonly string[] = ['table-saw', 'mortiser', 'assembly', 'fitting'];

for (const [station, name, stage] of STOPS)
  test(
    `${station}: with four different doors waiting the queue names them, and Done for each leads to the next`,
    {
      tag: GUARDED.includes(station) ? [] : '@proof',
    },
    async ({ page }) => {
      const codes: string[] = [];
      for (const door of plan.doors) codes.push(await bring(door, name, stage));
      // From another station's choice, as a person comes to it: the queue is built on a page that stands already.
      await page.goto(`${hub.url}/station`);
      const choice = page.locator(`[data-choose-station="${station}"]`);
      await expect(choice).toHaveAttribute('data-waiting', /^[1-9]/);
      const told = await choice.getAttribute('data-waiting');
      await expect(choice).toContainText(`${told ?? ''} waiting`);
      await choice.click();
      await expect(page.locator('[data-loaded="true"]')).toBeVisible();
      expect((await counts(page)).all).toBe(Number(told));
      /** How the first group was told each time. */
      const said: string[] = [];
      for (const [k, code] of codes.entries()) {
        await expect(page.locator('[data-group="0"]')).toBeVisible();
        const { all, shown, groups } = await counts(page);
        expect(all).toBeGreaterThanOrEqual(codes.length - k);
        expect(shown, `${all} wait`).toBe(all);
        expect(groups).toBeGreaterThan(0);
        said.push(await toldOf(page));
        if (k === 1) await keep(page, `queue-${station}-1280`);
        if (station === 'assembly') {
          // Here a door's parts are gathered first, and the glue-up follows by itself.
          for (const part of plan.doors[k]?.parts ?? []) await scan(page, part.code);
          await expect(page.locator('main[data-stage="dryfit"][data-code]')).toBeVisible();
          await page.click('[data-action="done"]');
          await expect(page.locator('main[data-stage="glue"]')).toBeVisible();
          await page.click('[data-action="close"]');
          continue;
        }
        await scan(page, code);
        const setup = page.locator(`main[data-code="${code}"]`);
        await expect(setup).toHaveAttribute('data-stage', stage);
        // One step for each place, the last of them the mark.
        const places = plan.doors[k]?.parts
          .find(({ part }) => part === name)
          ?.stages.find((each) => each.stage === stage)?.places;
        for (let step = 0; step < (places?.length ?? 1); step += 1) {
          if (places !== undefined)
            await expect(page.locator('[data-places]')).toHaveAttribute(
              'data-places',
              `${step + 1}/${places.length}`,
            );
          await page.click('[data-action="done"]');
        }
        await expect(page.getByRole('status')).toContainText(/done/);
        await expect(page.locator('main[data-code]')).toHaveCount(0);
      }
      if (station === 'milling') expect(said).toEqual(['whole', 'changes', 'changes', 'changes']);
      if (station !== 'fitting') return;
      expect(said).toEqual(['whole', 'surveyed', 'whole', 'whole']);
      await expect(page.locator('section.waiting')).toContainText('Nothing waits here now.');
    },
  );

test('at fitting a surveyed door shows eight amounts, one that was not its own two sizes, each under a name of its own', async ({
  page,
}) => {
  const [plain, surveyed] = plan.doors.map((door) => door.parts[0]?.code ?? '');
  for (const code of [plain ?? '', surveyed ?? ''])
    expect((await post(hub, code, 'fitting', 'trim', 'undo')).status).toBe(200);
  await open(page, 'fitting');
  await scan(page, surveyed ?? '');
  await expect(page.locator(`main[data-code="${surveyed}"] [data-setting="takeOff"]`)).toHaveCount(8);
  await scan(page, plain ?? '');
  const setup = page.locator(`main[data-code="${plain}"]`);
  await expect(setup.locator('[data-setting="finishedWidth"]')).toContainText('width after trimming');
  await expect(setup.locator('[data-setting="finishedHeight"]')).toContainText('height after trimming');
  await expect(page.locator('main')).toHaveCount(1);
});
