// @vitest-environment node
import { afterEach, expect, test, vi } from 'vitest';
import { planByDoor } from '#ui/hub/plan-by-door.ts';
import { liveHub } from '../../main/hub/live-hub.ts';

afterEach(() => {
  vi.unstubAllGlobals();
});

const opening = (width: string) => ({ width, height: '30' });
const JOB = (b = '18') => ({
  format: 1,
  id: 'hall',
  job: 'Hall',
  units: 'in',
  doors: [
    { mark: 'A', quantity: 150, opening: opening('16') },
    { mark: 'B', quantity: 90, opening: opening(b) },
    { mark: 'C', quantity: 3, opening: opening('20') },
  ],
});

/** A hub with the job, and the addresses that a screen has asked it for. */
async function screenOf() {
  const live = await liveHub();
  await live.ask('POST', '/jobs', JOB());
  const asked: string[] = [];
  const direct = fetch;
  vi.stubGlobal('fetch', (path: string, init?: RequestInit) => {
    if (path.startsWith('http')) return direct(path, init);
    asked.push(path);
    return direct(`${live.hub.url}${path}`, init);
  });
  return { ...live, taken: () => asked.splice(0) };
}

test('a large plan is put together from one door of each kind, and is the plan; after a save only what differs is asked for', async () => {
  const { ask, taken } = await screenOf();
  const first = await planByDoor('hall', 243, null);
  expect(first).toEqual((await ask('GET', '/jobs/hall')).body);
  expect(taken().filter((path) => path !== '/api/jobs/hall/doors')).toEqual([
    '/api/jobs/hall/doors/C-1',
    '/api/jobs/hall/doors/B-1',
    '/api/jobs/hall/doors/A-1',
  ]);
  expect(first?.doors[7]?.stages).toBe(first?.doors[8]?.stages);

  await ask('PUT', '/jobs/hall', { revision: 1, file: JOB('19') });
  const second = await planByDoor('hall', 243, first);
  expect(second).toEqual((await ask('GET', '/jobs/hall')).body);
  expect(second?.doors[150]?.values.finishedWidth).not.toBe(first?.doors[150]?.values.finishedWidth);
  expect(taken().filter((path) => path !== '/api/jobs/hall/doors')).toEqual(['/api/jobs/hall/doors/B-1']);

  const code = second?.doors[200]?.parts[0]?.code;
  const mark = {
    id: '11111111-0000-4000-8000-000000000000',
    code,
    station: 'milling',
    stage: 'mill',
    mark: 'spoiled',
  };
  const marked = await ask('POST', '/marks', { ...mark, at: new Date().toISOString() });
  expect(marked.status).toBe(200);
  const third = await planByDoor('hall', 243, second);
  expect(third).toEqual((await ask('GET', '/jobs/hall')).body);
  expect(third?.doors[200]?.parts[0]?.code).toBe(marked.body.replacement);
  expect(taken().filter((path) => path !== '/api/jobs/hall/doors')).toEqual([]);
});

test('a door that was measured by itself is a kind of its own', async () => {
  const { ask, taken } = await screenOf();
  const first = await planByDoor('hall', 243, null);
  taken();
  const measured = { doors: { 'A-77': { thickness: '13/16' } } };
  expect((await ask('PUT', '/jobs/hall/measured', { revision: 1, measured })).status).toBe(200);
  const second = await planByDoor('hall', 243, first);
  expect(second).toEqual((await ask('GET', '/jobs/hall')).body);
  expect(taken().filter((path) => path !== '/api/jobs/hall/doors')).toEqual(['/api/jobs/hall/doors/A-77']);
});

test('a job that is saved while its doors are asked for comes whole and of one plan', async () => {
  const { ask, hub } = await screenOf();
  const direct = fetch;
  let saved = false;
  vi.stubGlobal('fetch', async (path: string, init?: RequestInit) => {
    const answer = await direct(path, init);
    if (path.endsWith('/doors/B-1') && !saved) {
      saved = true;
      await ask('PUT', '/jobs/hall', {
        revision: 1,
        file: { ...JOB('19'), doors: JOB('19').doors.slice(0, 2) },
      });
    }
    return answer;
  });
  const plan = await planByDoor('hall', 243, null);
  expect(saved).toBe(true);
  expect(plan).toEqual((await ask('GET', '/jobs/hall')).body);
  expect(plan?.doors).toHaveLength(240);
  expect(hub.store.jobs.get('hall')?.document.revision).toBe(2);
});

test('a small plan is asked for whole; where the hub is away there is none', async () => {
  const { taken } = await screenOf();
  expect((await planByDoor('hall', 200, null))?.doors).toHaveLength(243);
  expect(taken()).toEqual(['/api/jobs/hall']);
  expect(await planByDoor('none', 243, null)).toBeNull();
  vi.stubGlobal('fetch', () => Promise.reject(new Error('away')));
  expect(await planByDoor('hall', 243, null)).toBeNull();
});
