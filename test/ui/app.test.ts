import 'fake-indexeddb/auto';
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { STATIONS } from '#core/stages/stations.ts';
import type { PlanPart } from '#core/plan/plan.ts';
import { stationName } from '#core/telling/names.ts';
import App from '#ui/App.svelte';
import { live } from '#ui/hub/live.svelte.ts';
import { go } from '#ui/route.svelte.ts';
import { openShop } from './station/shop-for-stations.ts';

/** Which function throws now, as a fault of the program would. */
const trap = vi.hoisted(() => ({
  at: '',
  /** Which test it is: its errors are told apart from those of the others. */
  run: 0,
  set<A extends unknown[], R>(name: string, real: (...args: A) => R) {
    return (...args: A): R => {
      if (trap.at === name) throw new Error(`a fault in ${name}, ${trap.run}`);
      return real(...args);
    };
  },
}));
vi.mock(import('#core/queue/groups.ts'), async (original) => {
  const real = await original();
  return { ...real, queueGroups: trap.set('queueGroups', real.queueGroups) };
});
vi.mock(import('#core/plan/short-part.ts'), async (original) => {
  const real = await original();
  return { ...real, isShortPart: trap.set('isShortPart', real.isShortPart) };
});
vi.mock(import('#ui/assembly/door-map.ts'), async (original) => {
  const real = await original();
  return { ...real, doorMap: trap.set('doorMap', real.doorMap) };
});
vi.mock(import('#ui/fitting/survey-plan.ts'), async (original) => {
  const real = await original();
  return { ...real, surveyIn: trap.set('surveyIn', real.surveyIn) };
});
vi.mock(import('#core/marks/board.ts'), async (original) => {
  const real = await original();
  return { ...real, boardDoor: trap.set('boardDoor', real.boardDoor) };
});
vi.mock(import('#core/planning/plan-file.ts'), async (original) => {
  const real = await original();
  return { ...real, planFile: trap.set('planFile', real.planFile) };
});
vi.mock(import('#core/plan/note-lines.ts'), async (original) => {
  const real = await original();
  return { ...real, noteLines: trap.set('noteLines', real.noteLines) };
});
vi.mock(import('#ui/screen-size.ts'), async (original) => {
  const real = await original();
  return { ...real, screenWidthMm: trap.set('screenWidthMm', real.screenWidthMm) };
});

let shop: ReturnType<typeof openShop>;
let errors: unknown[];

beforeEach(() => {
  vi.spyOn(live, 'start').mockImplementation(() => undefined);
  errors = [];
  vi.spyOn(console, 'error').mockImplementation((error: unknown) => void errors.push(error));
  vi.stubGlobal('fetch', (path: string) =>
    Promise.resolve(
      new Response(
        JSON.stringify(
          path.endsWith('/session')
            ? { pin: false, open: true }
            : path.endsWith('/stickers') || path.endsWith('/bin')
              ? { jobs: [] }
              : {},
        ),
      ),
    ),
  );
  // The test's document has no sizes to tell of, and no type to wait for.
  Object.defineProperty(document, 'fonts', { value: { status: 'loaded' }, configurable: true });
  vi.stubGlobal(
    'ResizeObserver',
    class {
      observe(): void {}
      unobserve(): void {}
      disconnect(): void {}
    },
  );
  trap.run += 1;
  shop = openShop();
});
afterEach(() => {
  cleanup();
  trap.at = '';
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const part = (name: string): PlanPart => {
  const found = shop.plan.doors[0]?.parts.find((each) => each.part === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};
function allPartsDone(): void {
  for (const { code, stages } of shop.plan.doors[0]?.parts ?? [])
    for (const { stage, station } of stages)
      shop.mark({ id: `${code} ${stage}`, code, station, stage, mark: 'done', at: '2026-11-26T08:00:00Z' });
}
/** What a scanner types. */
async function scan(code: string): Promise<void> {
  for (const key of [...code, 'Enter']) await fireEvent.keyDown(window, { key });
}
const click = async (selector: string) => {
  const button = await waitFor(() => {
    const found = document.querySelector(selector);
    if (found === null) throw new Error(`no ${selector}`);
    return found;
  });
  await fireEvent.click(button);
};

/** The plain message stands with a way to try again, to load anew and to every other screen; the error was told once. */
async function troubleTold(fault: string): Promise<void> {
  await waitFor(() => expect(screen.getByRole('alert').textContent).toContain('could not be drawn'));
  for (const name of ['Try again', 'Load anew', 'Stations', 'Board', 'Office'])
    expect(screen.getByRole('button', { name })).toBeInstanceOf(HTMLButtonElement);
  const told = errors.filter((error) => String(error).includes(`a fault in ${fault}, ${trap.run}`));
  expect(told).toHaveLength(1);
}

test.each(STATIONS)(
  'a fault at the idle %s is told in plain words, and trying again shows it',
  async (id) => {
    trap.at = 'queueGroups';
    go(`/station/${id}`);
    render(App);
    await troubleTold('queueGroups');
    trap.at = '';
    await click('[data-action="again"]');
    expect(screen.getByRole('heading', { name: stationName(id) })).toBeInstanceOf(HTMLHeadingElement);
    expect(document.querySelector('[data-trouble]')).toBeNull();
  },
);

test('a fault in a set-up is told, and leads to the choice of stations', async () => {
  go('/station/milling');
  render(App);
  trap.at = 'isShortPart';
  await scan(part('stile-left').code);
  await troubleTold('isShortPart');
  await click('[data-way="station"]');
  await waitFor(() => expect(document.querySelector('[data-choose-station="milling"]')).not.toBeNull());
});

test('a fault where a door is put together is told', async () => {
  allPartsDone();
  go('/station/assembly');
  render(App);
  trap.at = 'doorMap';
  await scan(part('stile-left').code);
  await troubleTold('doorMap');
});

test('a fault where an opening is surveyed is told', async () => {
  allPartsDone();
  const { code } = part('stile-left');
  for (const stage of ['dryfit', 'glue'])
    shop.mark({ id: stage, code, station: 'assembly', stage, mark: 'done', at: '2026-11-26T08:00:00Z' });
  go('/station/fitting');
  render(App);
  await scan(code);
  trap.at = 'surveyIn';
  await click('[data-action="survey"]');
  await troubleTold('surveyIn');
});

test('a fault on the board is told, and leads to the office', async () => {
  trap.at = 'boardDoor';
  go('/board');
  render(App);
  await troubleTold('boardDoor');
  await click('[data-way="office"]');
  await waitFor(() => expect(document.querySelector('[data-action="new-job"]')).not.toBeNull());
});

test('a fault at the choice of stations is told, and its own way leads back to it', async () => {
  trap.at = 'screenWidthMm';
  go('/station');
  render(App);
  await troubleTold('screenWidthMm');
  trap.at = '';
  await click('[data-way="station"]');
  await waitFor(() => expect(document.querySelector('[data-choose-station="milling"]')).not.toBeNull());
});

test('a fault in the office is told', async () => {
  go('/office');
  render(App);
  trap.at = 'planFile';
  await click('[data-action="new-job"]');
  await troubleTold('planFile');
});

test('a fault in the preview leaves the form with what is typed in it, and the next change draws it again', async () => {
  go('/office');
  render(App);
  await click('[data-action="new-job"]');
  const type = (name: string, value: string) => {
    const field = document.querySelector(`[name="${name}"]`);
    if (field === null) throw new Error(`no field ${name}`);
    return fireEvent.input(field, { target: { value } });
  };
  await type('mark', 'A');
  await type('width', '16');
  trap.at = 'noteLines';
  await type('height', '30');
  await waitFor(() => expect(document.querySelector('[data-trouble="pane"]')).not.toBeNull());
  expect(document.querySelector('[data-action="save-job"]')).not.toBeNull();
  expect(document.querySelector<HTMLInputElement>('[name="width"]')?.value).toBe('16');
  trap.at = '';
  await type('height', '31');
  await waitFor(() => expect(document.querySelector('[data-trouble="pane"]')).toBeNull());
  expect(document.querySelector('.preview h2')?.textContent).toContain('A');
});
