import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';
import { randomUUID } from 'node:crypto';
import type { Plan, PlanPart } from '#core/plan/plan.ts';

/** Sends a mark to a hub as a station would. */
export async function post(
  hub: { readonly url: string },
  code: string,
  station: string,
  stage: string,
  mark = 'done',
): Promise<Response> {
  return fetch(`${hub.url}/api/marks`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ id: randomUUID(), code, station, stage, mark, at: new Date().toISOString() }),
  });
}

/** Does a part's stages up to one of them. */
export async function doneUntil(
  hub: { readonly url: string },
  { code, stages }: Pick<PlanPart, 'code' | 'stages'>,
  until: string,
): Promise<void> {
  for (const { stage, station } of stages) {
    if (stage === until) return;
    expect([200, 409], stage).toContain((await post(hub, code, station, stage)).status);
  }
}

/** The plan of the one job that a hub has. */
export async function onlyPlan(hub: { readonly url: string }): Promise<Plan> {
  const list = (await (await fetch(`${hub.url}/api/jobs`)).json()) as { jobs: { id: string }[] };
  return (await (await fetch(`${hub.url}/api/jobs/${list.jobs[0]?.id ?? ''}`)).json()) as Plan;
}

/** A part of a plan by its door's and its own name. */
export function partOf(plan: Plan, door: string, name: string): PlanPart {
  const found = plan.doors.find((each) => each.door === door)?.parts.find((each) => each.part === name);
  if (found === undefined) throw new Error(`no ${name} in ${door}`);
  return found;
}

/**
 * A burst: the keys are sent without waiting for one another, each with the moment at which a scanner would have pressed it,
 * whatever else the machine does.
 */
export async function scan(page: Page, code: string): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const start = Date.now() / 1000;
  const sent = [...code, 'Enter'].flatMap((key, k) => {
    const timestamp = start + k * 0.002;
    const pressed =
      key === 'Enter' ? { key, code: key, text: '\r', windowsVirtualKeyCode: 13 } : { key, text: key };
    return [
      session.send('Input.dispatchKeyEvent', { ...pressed, timestamp, type: 'keyDown' }),
      session.send('Input.dispatchKeyEvent', { key, timestamp, type: 'keyUp' }),
    ];
  });
  await Promise.all(sent);
  await session.detach();
}

/** Keeps a picture of a screen to be looked at, when asked to: KEEP_SCREENS=1. */
export async function keep(page: Page, name: string): Promise<void> {
  if (process.env.KEEP_SCREENS !== undefined) await page.screenshot({ path: `test/e2e/screens/${name}.png` });
}

/** What a person could not hit, see or reach: the page itself scrolls, a target under 64 px, words that do not fit, or (with axe) what axe finds. */
export async function faultsOf(page: Page, withAxe = true): Promise<string[]> {
  const faults = await page.evaluate(() => {
    const found: string[] = [];
    const root = document.documentElement;
    if (root.scrollHeight > innerHeight + 1 || root.scrollWidth > innerWidth + 1)
      found.push('the page scrolls');
    for (const target of document.querySelectorAll('button, a[href], input, select')) {
      const { width, height } = target.getBoundingClientRect();
      if (width > 0 && (width < 63.5 || height < 63.5))
        found.push(`${target.outerHTML.slice(0, 90)} ${Math.round(width)} × ${Math.round(height)}`);
    }
    for (const element of document.querySelectorAll<HTMLElement>('body *')) {
      const style = getComputedStyle(element);
      const clips = style.overflowX === 'hidden' || element.matches('button, a, label, td, th, h1, h2, h3');
      if (!clips || element.closest('.hidden, svg, .drawing') !== null || style.display === 'inline')
        continue;
      if (element.scrollWidth > element.clientWidth + 1)
        found.push(`clipped: ${element.tagName} ${element.textContent.trim().slice(0, 60)}`);
    }
    return found;
  });
  return withAxe ? [...faults, ...(await axeFaults(page))] : faults;
}

/** What axe finds on a page. */
export async function axeFaults(page: Page): Promise<string[]> {
  // No screen has frames: all in one run, where the usual way opens one more page for the results each time.
  const axe = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] });
  const { violations } = await axe.analyze();
  return violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html ?? ''}`);
}

/** A job of three hundred doors, arched, with a mid rail and plain by turns. */
export function threeHundredDoors(job = 'Harbour flats'): unknown {
  const shapes = [
    { arch: { rise: '1 3/4', flat: '3/4' } },
    { midRails: [{ width: '2 1/4', centre: '10' }] },
    {},
  ];
  return {
    format: 1,
    job,
    due: '2027-03-26',
    units: 'in',
    doors: Array.from({ length: 100 }, (_, k) => ({
      mark: `H${k + 1}`,
      quantity: 3,
      opening: { width: String(14 + (k % 7)), height: `${22 + (k % 11)} 1/2` },
      ...shapes[k % 3],
    })),
  };
}

/** Gives a job to a hub. */
export async function addJob(hub: { readonly url: string }, file: unknown): Promise<string> {
  const answer = await fetch(`${hub.url}/api/jobs`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(file),
  });
  expect(answer.status).toBe(201);
  return ((await answer.json()) as { id: string }).id;
}

/** Gives a job to a hub; its plan. */
export async function addedPlan(hub: { readonly url: string }, file: unknown): Promise<Plan> {
  const id = await addJob(hub, file);
  return (await (await fetch(`${hub.url}/api/jobs/${id}`)).json()) as Plan;
}
