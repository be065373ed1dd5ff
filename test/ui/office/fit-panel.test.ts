import 'fake-indexeddb/auto';
import { render } from '@testing-library/svelte';
import { afterEach, expect, test } from 'vitest';
import { shopAnswer } from '#core/api/shop-api.ts';
import { indexParts } from '#core/marks/live-plan.ts';
import { emptyProgress } from '#core/marks/progress.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { writeProfile } from '#core/shop/read-profile.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import { shopAtFirst } from '#core/shop/shop-start.ts';
import type { LiveJob } from '#ui/hub/live.svelte.ts';
import { shop } from '#ui/hub/shop.svelte.ts';
import FitPanel from '#ui/office/FitPanel.svelte';

afterEach(() => {
  shop.now = null;
});

function jobOf(...doors: readonly object[]): LiveJob {
  const opening = { width: '16', height: '40' };
  const file = {
    format: 1,
    job: 'Rope walk',
    units: 'in',
    doors: doors.map((door, k) => ({ mark: 'AB'[k], opening, ...door })),
  };
  const planned = planFile(file);
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  const plan = planned.value;
  const progress = emptyProgress(plan.id);
  const line = {
    id: plan.id,
    job: plan.job,
    units: plan.units,
    doors: plan.doors.length,
    parts: 0,
    left: 0,
    revision: 1,
    hash: '',
  };
  return { line, plan, index: indexParts(plan), file, asMarked: [], confirmed: progress, progress };
}

/** The shop's own ± instead of the built-in ones. */
function shopWithin(tolerances: object): void {
  const first = shopAtFirst();
  shop.now = shopAnswer.parse({
    revision: 1,
    ...first,
    otherProfile: writeProfile(builtInProfile('mm')),
    profile: { ...first.profile, tolerances },
  });
}
const text = (selector: string) =>
  [...document.querySelectorAll(selector)].map((each) => each.textContent.replace(/\s+/g, ' ').trim());

test('each kind of door is shown once with its closures in a table, what closes only by luck before it', () => {
  render(FitPanel, { job: jobOf({ quantity: 10 }, { midRails: [{ width: '3', centre: '18' }] }) });
  expect(text('[data-fit-kind] h3')).toEqual([
    'A-1, A-2, A-3, A-4, A-5, A-6, A-7, A-8 and 2 more doors in',
    'B-1 in',
  ]);
  const [first, second] = document.querySelectorAll('[data-fit-kind]');
  expect(first?.querySelector('[data-closure="mid-mitres"]')).toBeNull();
  expect(second?.querySelector('[data-closure="mid-mitres"]')?.getAttribute('data-verdict')).toBe('by-luck');
  expect(second?.querySelector('[data-closure="mid-mitres"]')?.textContent).toMatch(
    /closes only by luck\..*Watch Left stile: sight edge/,
  );
  const row = first?.querySelector('[data-row="mortise-floor"]');
  expect([...(row?.querySelectorAll('td') ?? [])].map((cell) => cell.textContent)).toEqual([
    '1/16',
    '0 or more',
    // Depth and notch 1/128 each, the stop 1/64; root of 1 + 1 + 4 over 128: 0.019.
    '1/32 to 3/32',
    '0.043 to 0.082',
    expect.stringMatching(/^.+: .*stop block/),
  ]);
});

test('it is judged by the shop’s own ±: one that is never off has nothing to doubt, a coarser one more', () => {
  shopWithin({ fence: '0', stop: '0', height: '0', milling: '0' });
  const { unmount } = render(FitPanel, { job: jobOf({}) });
  expect(document.querySelectorAll('[data-closure]')).toHaveLength(0);
  expect(text('.well')).toHaveLength(1);
  unmount();
  shopWithin({ fence: '1/128', stop: '7/128', height: '1/128', milling: '1/64' });
  render(FitPanel, { job: jobOf({}) });
  expect(document.querySelector('[data-closure="mortise-floor"]')?.getAttribute('data-verdict')).toBe(
    'by-luck',
  );
  expect(document.querySelector('[data-closure="mitres"]')?.getAttribute('data-verdict')).toBe('unlikely');
});
