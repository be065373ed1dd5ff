import { expect, type Page, test } from '@playwright/test';
import { jobProgress } from '#core/api/marks-api.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import type { Plan, PlanDoor, PlanPart } from '#core/plan/plan.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { failOnErrors } from './quiet.ts';
import { onlyPlan, partOf } from './shop-floor.ts';

/** A hub with the demo job for the tests of one file. */
class DemoHub {
  #hub: HubProcess | undefined;
  #plan: Plan | undefined;
  #data = '';

  async start(): Promise<void> {
    this.#data = freshData();
    this.#hub = await startHubProcess(this.#data, 0, ['--demo']);
    this.#plan = await onlyPlan(this.#hub);
  }

  async stop(): Promise<void> {
    await this.#hub?.end('SIGTERM');
    removeData(this.#data);
  }

  get url(): string {
    if (this.#hub === undefined) throw new Error('the hub is not started');
    return this.#hub.url;
  }

  /** The folder of its data. */
  get data(): string {
    return this.#data;
  }

  get plan(): Plan {
    if (this.#plan === undefined) throw new Error('the hub is not started');
    return this.#plan;
  }

  door(name: string): PlanDoor {
    const found = this.plan.doors.find((each) => each.door === name);
    if (found === undefined) throw new Error(`no door ${name}`);
    return found;
  }

  part(door: string, name: string): PlanPart {
    return partOf(this.plan, door, name);
  }

  async progress(): Promise<JobProgress> {
    const answer: unknown = await (await fetch(`${this.url}/api/jobs/${this.plan.id}/progress`)).json();
    return jobProgress.parse(answer);
  }

  /** Opens a station's screen and waits until it has its jobs. */
  async open(page: Page, station: string): Promise<void> {
    await page.goto(`${this.url}/station/${station}`);
    await expect(page.locator('[data-loaded="true"]')).toBeVisible();
  }

  /** Ends it; it can be started again where it was. */
  async end(signal: 'SIGKILL' | 'SIGTERM'): Promise<void> {
    await this.#hub?.end(signal);
  }

  /** Starts it again on the same address and data. */
  async again(): Promise<void> {
    this.#hub = await startHubProcess(this.#data, Number(new URL(this.url).port));
  }
}

/** Starts a hub with the demo job before the tests of this file and ends it after them. No page of theirs may write an error. */
export function demoHub(): DemoHub {
  failOnErrors();
  const hub = new DemoHub();
  test.beforeAll(() => hub.start());
  test.afterAll(() => hub.stop());
  return hub;
}
