import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import type { Plan } from '#core/plan/plan.ts';
import { liveHub } from './live-hub.ts';

test('the list of jobs says how many doors of each are left to finish, whatever became of other doors', async () => {
  const { ask } = await liveHub();
  const json = async (path: string, method = 'GET', body?: unknown): Promise<unknown> => {
    const answer = await ask(method, path, body);
    expect(answer.status).toBeLessThan(300);
    return answer.body;
  };
  const left = async () =>
    ((await json('/jobs')) as { jobs: { left: number }[] }).jobs.map((job) => job.left);
  const file = (marks: readonly string[]) => ({
    format: 1,
    job: 'Sail loft',
    units: 'in',
    doors: marks.map((mark) => ({ mark, opening: { width: '16', height: '30' } })),
  });
  const { id } = (await json('/jobs', 'POST', file(['A', 'B']))) as { id: string };
  expect(await left()).toEqual([2]);
  const plan = (await json(`/jobs/${id}`)) as Plan;
  const a = plan.doors[0];
  if (a === undefined) throw new Error('the job has a door');
  const code = a.parts[0]?.code ?? '';
  const stages = [
    ...a.parts.flatMap((part) => part.stages.map((stage) => ({ ...stage, code: part.code }))),
    ...a.stages.map((stage) => ({ ...stage, code })),
  ];
  for (const { code, station, stage } of stages)
    await json('/marks', 'POST', {
      id: randomUUID(),
      code,
      station,
      stage,
      mark: 'done',
      at: '2026-11-25T08:00:00.000Z',
    });
  expect(await left()).toEqual([1]);
  await json(`/jobs/${id}`, 'PUT', { revision: 1, file: file(['B']) });
  expect(await left()).toEqual([1]);
});
