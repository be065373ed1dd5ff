import { expect, type Page } from '@playwright/test';
import type { demoHub } from './demo-hub.ts';
import { doneUntil, post, scan } from './shop-floor.ts';

type DemoHub = ReturnType<typeof demoHub>;
/** A screen and how it is come to, from any other or from the one before it. */
export type Screen = readonly [name: string, show: (page: Page) => Promise<void>];

/** An opening's six measures, nearly square. */
const OPENING = [
  ['widthBottom', '14 3/4'],
  ['widthTop', '14 7/8'],
  ['heightLeft', '30 5/16'],
  ['heightRight', '30 5/16'],
  ['diagonalUp', '33.7654'],
  ['diagonalDown', '33.7104'],
] as const;

/** Works the demo job so far that each screen has something to show: one door glued, one gathered, one cut but for one stile. */
export async function workedUntilFitting(hub: DemoHub): Promise<void> {
  for (const door of [hub.door('ARCH-L-1'), hub.door('LOCKER-1')])
    for (const part of door.parts)
      await doneUntil(
        hub,
        part,
        part.part === 'stile-left' && door.door === 'LOCKER-1' ? 'mortise' : 'dryfit',
      );
  for (const part of hub.door('ARCH-R-1').parts) await doneUntil(hub, part, 'dryfit');
  for (const stage of ['dryfit', 'glue'])
    expect((await post(hub, hub.part('ARCH-R-1', 'stile-left').code, 'assembly', stage)).status).toBe(200);
}

/** The screens of the stations, of fitting and of the board, in the order in which they are come to. */
export function floorScreens(hub: DemoHub): readonly Screen[] {
  const code = (door: string, part: string) => hub.part(door, part).code;
  const setup = async (page: Page, id: string, scanned: string) => {
    await hub.open(page, id);
    await scan(page, scanned);
    await expect(page.locator(`main[data-code="${scanned}"]`)).toBeVisible();
  };
  return [
    [
      'choice of station',
      async (page) => {
        await page.goto(`${hub.url}/station`);
        await expect(page.locator('[data-choose-station="mortiser"]')).toBeVisible();
      },
    ],
    ['idle queue', (page) => hub.open(page, 'milling')],
    [
      'setup of a stile with a mid rail at the mortiser',
      (page) => setup(page, 'mortiser', code('LOCKER-1', 'stile-left')),
    ],
    [
      'why',
      async (page) => {
        await page.locator('[data-setting] button').first().click();
        await expect(page.locator('.why')).toBeVisible();
      },
    ],
    ['setup at milling', (page) => setup(page, 'milling', code('BENCH-1', 'stile-left'))],
    [
      'spoiled',
      async (page) => {
        await page.click('[data-action="spoil"]');
        await expect(page.locator('[data-reason="split"]')).toBeVisible();
      },
    ],
    [
      'message',
      async (page) => {
        await hub.open(page, 'band-saw');
        await scan(page, code('BENCH-1', 'stile-left'));
        await expect(page.locator('[data-message="wrong-station"]')).toBeVisible();
      },
    ],
    [
      'keypad',
      async (page) => {
        await hub.open(page, 'table-saw');
        await page.click('[data-action="type"]');
        await expect(page.locator('[data-key="enter"]')).toBeVisible();
      },
    ],
    [
      'keypad with a mistyped code',
      async (page) => {
        for (const key of 'AAAAAAAAAA') await page.click(`[data-key="${key}"]`);
        await page.click('[data-key="enter"]');
        await expect(page.getByRole('alert')).not.toBeEmpty();
      },
    ],
    [
      'find',
      async (page) => {
        await hub.open(page, 'table-saw');
        await page.click('[data-action="find"]');
        await expect(page.locator('[data-find-door="KEYS-1"]')).toBeVisible();
      },
    ],
    [
      'find a part of the door',
      async (page) => {
        await page.click('[data-find-door="KEYS-1"]');
        await expect(page.locator('[data-find-part="rail-bottom"]')).toBeVisible();
      },
    ],
    [
      'people',
      async (page) => {
        await hub.open(page, 'bench');
        await page.click('[data-action="people"]');
        await expect(page.locator('[data-action="close-sheet"]')).toBeVisible();
      },
    ],
    [
      'assembly gathering',
      async (page) => {
        await hub.open(page, 'assembly');
        await scan(page, code('ARCH-L-1', 'stile-left'));
        await expect(page.locator('[data-gathering="ARCH-L-1"]')).toBeVisible();
      },
    ],
    ['fitting', (page) => setup(page, 'fitting', code('ARCH-R-1', 'stile-left'))],
    [
      'survey',
      async (page) => {
        await page.click('[data-action="survey"]');
        await expect(page.locator('[data-measure="widthBottom"]')).toBeVisible();
      },
    ],
    [
      'survey of an opening, measured and saved',
      async (page) => {
        for (const [name, text] of OPENING) {
          // Asked for by itself the first time; tapped to be asked again the second.
          await page.click(`[data-measure="${name}"]`);
          await page.getByRole('textbox').fill(text);
          await page.keyboard.press('Enter');
        }
        await expect(page.locator('[data-setting="takeOff"]').first()).toBeVisible();
      },
    ],
    [
      'trimming by the survey',
      async (page) => {
        await page.click('[data-action="save-survey"]');
        await expect(page.locator('[data-said="survey"]')).not.toBeEmpty();
        await page.click('[data-action="close-sheet"]');
        await expect(page.locator('main [data-setting="takeOff"]')).toHaveCount(8);
      },
    ],
    [
      'board',
      async (page) => {
        await page.goto(`${hub.url}/board`);
        await expect(page.locator('[data-door="BENCH-3"]')).toBeVisible();
      },
    ],
    [
      'sheet of a door',
      async (page) => {
        await page.locator('[data-door="LOCKER-1"]').getByRole('button', { name: 'LOCKER-1' }).press('Enter');
        await expect(page.locator('[data-door-sheet="LOCKER-1"] svg')).toBeVisible();
      },
    ],
    [
      'sheet of a part',
      async (page) => {
        await page.click('[data-action="close-sheet"]');
        await page.locator('[data-door="LOCKER-1"] [data-part="stile-left"]').click();
        await expect(page.locator('[data-part-sheet="stile-left"]')).toBeVisible();
      },
    ],
    [
      'question before a stage is taken back',
      async (page) => {
        await page.click('[data-action="take-back"]');
        await expect(page.locator('[data-question]')).toBeVisible();
      },
    ],
  ];
}
