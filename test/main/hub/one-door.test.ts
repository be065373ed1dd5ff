import { expect, test } from 'vitest';
import { liveHub } from './live-hub.ts';

const JOB = (quantity: number) => ({
  format: 1,
  job: 'Long hall',
  units: 'in',
  doors: [
    { mark: 'A', quantity, opening: { width: '16', height: '30' } },
    { mark: 'B', opening: { width: '18', height: '30' } },
  ],
});

test('one door of a plan is given by its name, on request with reasons and how exact each setting must be', async () => {
  const { ask } = await liveHub();
  const { body } = await ask('POST', '/jobs', JOB(2));
  const id = encodeURIComponent(String(body.id));
  const plan = (await ask('GET', `/jobs/${id}`)).body as { doors: { door: string }[] };
  const plain = await ask('GET', `/jobs/${id}/doors/A-2`);
  expect(plain.body).toEqual(plan.doors.find(({ door }) => door === 'A-2'));
  expect(JSON.stringify(plain.body)).not.toContain('"why"');
  const explained = await ask('GET', `/jobs/${id}/doors/B-1?why=1`);
  expect(explained.body).toMatchObject({ door: 'B-1', mark: 'B' });
  const cheek = (explained.body.parts as { part: string; stages: { stage: string }[] }[])
    .find(({ part }) => part === 'rail-bottom')
    ?.stages.find(({ stage }) => stage === 'cheek');
  expect(cheek).toMatchObject({
    why: { height: { datum: 'table' } },
    allow: { height: { less: '0', more: '1/256', lessBy: 'the tenon does not enter its groove' } },
  });
  const german = await ask('GET', `/jobs/${id}/doors/B-1?why=1`, undefined, { 'accept-language': 'de' });
  expect(JSON.stringify(german.body)).toContain('der Zapfen geht nicht in seine Nut');
});

test('a door that a job has not, and a job that there is not, are refused by code', async () => {
  const { ask } = await liveHub();
  const { body } = await ask('POST', '/jobs', JOB(1));
  const id = encodeURIComponent(String(body.id));
  expect(await ask('GET', `/jobs/${id}/doors/A-2`)).toMatchObject({
    status: 404,
    body: { code: 'door-unknown' },
  });
  expect(await ask('GET', `/jobs/none/doors/A-1?why=1`)).toMatchObject({
    status: 404,
    body: { code: 'job-unknown' },
  });
});

test('the reasons of a whole job are given up to fifty doors; beyond that the other address is named', async () => {
  const { ask } = await liveHub();
  const fifty = encodeURIComponent(String((await ask('POST', '/jobs', JOB(49))).body.id));
  expect((await ask('GET', `/jobs/${fifty}?why=1`)).status).toBe(200);
  const more = encodeURIComponent(String((await ask('POST', '/jobs', JOB(50))).body.id));
  const refused = await ask('GET', `/jobs/${more}?why=1`);
  expect(refused).toMatchObject({ status: 400, body: { code: 'why-too-many' } });
  expect(refused.body.message).toContain(`/api/jobs/${more}/doors/`);
  expect(refused.body.message).toContain('why=1');
  expect((await ask('GET', `/jobs/${more}`)).status).toBe(200);
  expect((await ask('GET', `/jobs/${more}/doors/A-50?why=1`)).status).toBe(200);
});
