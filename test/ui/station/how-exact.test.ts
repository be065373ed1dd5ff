import 'fake-indexeddb/auto';
import { render } from '@testing-library/svelte';
import { expect, test } from 'vitest';
import { stepOf } from '#core/settable/step.ts';
import { length } from '#core/length/length.ts';
import type { Allowed } from '#core/plan/plan.ts';
import SettingCell from '#ui/station/SettingCell.svelte';
import WhySheet from '#ui/station/WhySheet.svelte';

/** What is read of an element: words that a fraction is drawn with are said once. */
function said(selector: string): string | undefined {
  const found = document.querySelector(selector)?.cloneNode(true);
  if (!(found instanceof Element)) return undefined;
  for (const drawn of found.querySelectorAll('[aria-hidden]')) drawn.remove();
  return found.textContent.replace(/\s+/g, ' ').trim();
}

function cell(stage: string, name: string, value: string, more: { small?: boolean } = {}): void {
  const step = stepOf('in', length(1, 32));
  render(SettingCell, {
    stage,
    name,
    value,
    shown: value,
    units: 'in',
    step,
    explain: () => undefined,
    ...more,
  });
}

test.each<[string, string, string, string]>([
  // What is pared stands beside its line; what the saw cuts stands on it.
  ['mitre', 'sightEdge', '1 1/2', 'line at 1 1/2 exactly'],
  ['strip', 'run', '3', 'line at 3 exactly'],
  ['shoulder', 'stop', '1 1/4', 'to the line'],
  ['notch-bottom', 'to', '3', 'to the line'],
  ['cheek', 'height', '1/4', 'hand-push fit'],
  ['strip', 'fence', '2', 'line at 2'],
])('beside %s %s stands how exact it must be', (stage, name, value, words) => {
  cell(stage, name, value);
  expect(said(`[data-setting="${name}"] .line`)).toBe(words);
});

test('a number on which no fit hangs, and one of a place that is not worked on, says nothing of it', () => {
  cell('groove', 'depth', '3/8');
  expect(said('.line')).toBeUndefined();
  cell('shoulder', 'stop', '1 1/4', { small: true });
  expect(said('.line')).toBeUndefined();
});

function why(name: string, allow: Allowed | undefined): string | undefined {
  const { unmount } = render(WhySheet, {
    name,
    stage: 'mortise',
    value: '1 1/2',
    settable: '1 1/2',
    from: null,
    reason: 'because',
    allow,
    units: 'in',
    closed: () => undefined,
  });
  const words = said('[data-allow]');
  unmount();
  return words;
}

test('behind the tap it is said how exact a number must be, never with more than 1/16 of freedom', () => {
  const bounds = { lessBy: 'the tenon bottoms in the mortise', moreBy: 'the wood behind the mortise' };
  expect(why('depthFromEdge', { less: '0', more: '9/16', ...bounds })).toBe(
    'How exact: Up to 1/16 deeper, never shallower: the tenon bottoms in the mortise.',
  );
  expect(why('depthFromEdge', { less: '1/32', more: '1/256', ...bounds })).toBe(
    'How exact: Up to 1/32 shallower or a hair deeper.',
  );
  expect(why('depthFromEdge', { less: '0', more: '0', lessBy: 'it opens', moreBy: 'it opens' })).toBe(
    'How exact: To the line: it opens.',
  );
  expect(why('depthFromEdge', undefined)).toBeUndefined();
});
