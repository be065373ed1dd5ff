import { expect, test } from 'vitest';
import { freshFolder } from './fresh-folder.ts';
import { smallShop, planOf } from './small-shop.ts';

const door = (mark: string, thickness: string) => ({
  mark,
  opening: { width: '16', height: '30' },
  thickness,
});
const file = (...doors: object[]) => ({ format: 1, id: 'boot-room', job: 'Boot room', units: 'in', doors });

/** A shop whose job has these doors and sizes. */
async function measured(sizes: Record<string, unknown>, ...doors: object[]) {
  const store = await smallShop(freshFolder());
  const { jobs } = store;
  await jobs.update('boot-room', 1, file(...doors));
  const saved = await jobs.measure('boot-room', 2, sizes);
  if (saved.kind !== 'changed') throw new Error(JSON.stringify(saved));
  const now = () => jobs.get('boot-room')?.document.measured;
  const thick = () => planOf(jobs.get('boot-room')).doors.map(({ parts }) => parts[0]?.thickness);
  return { store, jobs, now, thick };
}

test('a door of another thickness that joins a job is as specified: what was measured stays with the others', async () => {
  const { store, jobs, now, thick } = await measured({ thickness: '25/32' }, door('A', '3/4'));
  await jobs.update('boot-room', 3, file(door('A', '3/4'), door('B', '7/8')));
  expect(now()).toEqual({ thickness: [{ of: '3/4', is: '25/32' }] });
  expect(thick()).toEqual(['25/32', '7/8']);
  await store.close();
});

test('measured sizes go along into other units with the job, those of each size too', async () => {
  const sizes = { thickness: [{ of: '3/4', is: '25/32' }] };
  const { store, jobs, now, thick } = await measured(sizes, door('A', '3/4'), door('B', '7/8'));
  const metric = (mark: string, thickness: string) => ({
    mark,
    opening: { width: '406.4', height: '762' },
    thickness,
  });
  await jobs.update('boot-room', 3, {
    ...file(metric('A', '19.05'), metric('B', '22.225')),
    units: 'mm',
  });
  expect(now()).toEqual({ thickness: [{ of: '19.05', is: '19.84375' }] });
  expect(thick()).toEqual(['19 27/32', '22 9/40']);
  await store.close();
});

test('one length for several sizes, and a size that no door has, are refused, and nothing is changed', async () => {
  const { store, jobs, now } = await measured({}, door('A', '3/4'), door('B', '7/8'));
  const refused = async (sizes: Record<string, unknown>) => {
    const answer = await jobs.measure('boot-room', 3, sizes);
    return answer.kind === 'faults' ? answer.faults.map(({ path, code }) => `${path} ${code}`) : answer.kind;
  };
  expect(await refused({ thickness: '25/32' })).toEqual(['thickness sizes-several']);
  expect(await refused({ thickness: [{ of: '1', is: '25/32' }] })).toEqual(['thickness[0].of size-unknown']);
  expect(now()).toEqual({});
  await store.close();
});
