import { expect } from 'vitest';
import type { PlanPart, PlanStage } from '#core/plan/plan.ts';
import { until } from '../../e2e/kiosk-process.ts';
import { everyMark } from '../kill-rounds.ts';
import type { Engine } from './engine.ts';
import { pictured } from './pictured.ts';
import type { Shop } from './shop.ts';

/** Where the person stands. */
export const STATION = 'mortiser';

/** What is done to a part there. */
export function stageOf({ stages }: PlanPart): PlanStage {
  const found = stages.find(({ station }) => station === STATION);
  if (found === undefined) throw new Error(`nothing to do at ${STATION}`);
  return found;
}

/** Scans a part, holds every number that is shown to the plan, place by place, and ends at the last. */
export async function setUp(engine: Engine, part: PlanPart, name: string): Promise<void> {
  const stage = stageOf(part);
  await engine.scan(part.code);
  await until('the set-up', async () =>
    (await engine.see(`[data-code="${part.code}"][data-stage="${stage.stage}"]`)).at(0),
  );
  await pictured(engine, name);
  // Dotted is what there is more behind.
  expect(await engine.style('[data-action="cautions"] span', 'text-decoration-style')).toBe('dotted');
  const planned = (setting: string, place: string | undefined) => {
    const settings: Readonly<Record<string, unknown>> | undefined =
      place === undefined ? stage.settings : stage.places?.find(({ at }) => at === place)?.settings;
    return String(settings?.[setting]);
  };
  const names = new Set<string>();
  for (;;) {
    const cells = await engine.see('[data-setting]');
    for (const { attributes } of cells) {
      const { 'data-setting': setting = '', 'data-value': value, 'data-place': place } = attributes;
      expect(value, `${setting} ${place ?? ''}`).toBe(planned(setting, place));
      names.add(setting);
    }
    const button = await until('Done to be alive', async () =>
      (await engine.see('[data-action="done"]')).find(
        ({ attributes }) => attributes['aria-disabled'] !== 'true',
      ),
    );
    const next = button.attributes['data-next-place'];
    if (next === undefined) break;
    await engine.click('[data-action="done"]');
    await until('the next place', async () =>
      (await engine.see('[data-action="done"]')).find(
        ({ attributes }) => attributes['data-next-place'] !== next,
      ),
    );
  }
  const all = [stage.settings, ...(stage.places ?? []).map(({ settings }) => settings)];
  expect([...names].sort()).toEqual([...new Set(all.flatMap((each) => Object.keys(each)))].sort());
}

/** Marks it, from its last place. */
export async function marked(engine: Engine, part: PlanPart): Promise<void> {
  await engine.click('[data-action="done"]');
  await until('the set-up put away', async () =>
    (await engine.see(`[data-code="${part.code}"]`)).length === 0 ? true : null,
  );
}

/** How often the hub has this part's mark. */
export async function timesMarked(shop: Shop, part: PlanPart): Promise<number> {
  const { stage } = stageOf(part);
  return (await everyMark(shop)).filter(
    ({ mark }) => mark.code === part.code && mark.stage === stage && mark.mark === 'done',
  ).length;
}
