import 'fake-indexeddb/auto';
import { render } from '@testing-library/svelte';
import { expect, test } from 'vitest';
import { stageName } from '#core/telling/names.ts';
import { tellRefusal } from '#core/telling/tell-refusal.ts';
import type { Kept } from '#ui/hub/kept-marks.ts';
import KeptSheet from '#ui/station/KeptSheet.svelte';
import MessageShape from '#ui/station/MessageShape.svelte';
import MessageSheet from '#ui/station/MessageSheet.svelte';

/** The path that is drawn in a sheet's sign. */
const signIn = (within: Element) => within.querySelector('svg path')?.getAttribute('d');
const tick = () => signIn(render(MessageShape, { code: 'already-done' }).container);

/** A kept mark of the strip on the bottom rail, refused as it is said. */
const kept = (code: string, message: string): Kept => ({
  order: 1,
  job: 'boot-room',
  door: 'BENCH-1',
  part: 'stile-left',
  mark: {
    id: '00000000-0000-4000-8000-000000000001',
    code: '803AX3UERH',
    station: 'table-saw',
    stage: 'strip',
    mark: 'done',
    at: '2026-11-25T08:00:00Z',
  },
  refused: { code, message },
});

test('a kept mark that was refused bears no tick, whatever it was refused for', () => {
  expect(tick()).toBeDefined();
  for (const code of ['already-done', 'stage-not-reached', 'malformed', 'spoiled']) {
    const { container, unmount } = render(KeptSheet, { one: kept(code, '') });
    expect(signIn(container)).toBeDefined();
    expect(signIn(container), code).not.toBe(tick());
    expect(container.textContent).not.toContain('✓');
    unmount();
  }
});

test('it says the stage by its name, and nothing by its id', () => {
  const message = tellRefusal('stage-not-reached', {
    stage: 'strip',
    missing: [{ stage: 'mortise' }, { stage: 'mitre-top' }],
  });
  const { container } = render(KeptSheet, { one: kept('stage-not-reached', message) });
  let said = container.textContent;
  for (const stage of ['strip', 'mortise', 'mitre-top']) {
    expect(said).toContain(stageName(stage));
    said = said.replaceAll(stageName(stage), '');
  }
  expect(said).not.toMatch(/mitre-top|strip|mortise|stile-left/);
});

test('a mark that is refused at once bears no tick either; a part that is done here keeps its own', () => {
  const message = { code: 'already-done', text: '', next: '', banner: false };
  const shown = (refused: object) =>
    signIn(
      render(MessageSheet, { message: { ...message, ...refused }, dismissed: () => undefined }).container,
    );
  expect(shown({ refused: true })).not.toBe(tick());
  expect(shown({})).toBe(tick());
});
