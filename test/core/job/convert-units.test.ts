import { expect, test } from 'vitest';
import { convertJob } from '#core/job/convert-units.ts';
import { planFile } from '#core/planning/plan-file.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };

test('inches become millimetres exactly: 16 1/2 in is 419.1 mm, 1/64 in is 0.396875 mm', () => {
  expect(
    convertJob(
      {
        format: 1,
        job: 'A',
        units: 'in',
        defaults: { reveal: '1/64', tenon: { length: 1, haunchClearance: '1/32' } },
        doors: [
          {
            mark: 'A',
            quantity: 2,
            opening: { width: '16-1/2"', height: '30' },
            midRails: [{ width: '3', centre: '10 1/8' }],
            arch: { kind: 'circular', rise: '1 3/4', flat: '3/4' },
            hinge: 'right',
            reveal: { left: '1/8', top: 0 },
          },
        ],
      },
      'mm',
    ),
  ).toEqual({
    format: 1,
    job: 'A',
    units: 'mm',
    defaults: { reveal: '0.396875', tenon: { length: '25.4', haunchClearance: '0.79375' } },
    doors: [
      {
        mark: 'A',
        quantity: 2,
        opening: { width: '419.1', height: '762' },
        midRails: [{ width: '76.2', centre: '257.175' }],
        arch: { kind: 'circular', rise: '44.45', flat: '19.05' },
        hinge: 'right',
        reveal: { left: '3.175', top: '0' },
      },
    ],
  });
});

test('there and back again plans the very same job', () => {
  const there = convertJob(demo, 'mm');
  expect(planFile(there).ok).toBe(true);
  expect(planFile(convertJob(there, 'in'))).toEqual(planFile(demo));
});

test('millimetres that are no whole fractions of an inch stay exact: 420 mm is 16 68/127 in', () => {
  const job = {
    format: 1,
    job: 'A',
    units: 'mm',
    doors: [{ mark: 'A', opening: { width: 420, height: '762' } }],
  };
  expect(convertJob(job, 'in').doors).toEqual([{ mark: 'A', opening: { width: '16 68/127', height: '30' } }]);
});

test('what is no length stays as it was typed, and a job in these units stays whole', () => {
  const job = { units: 'in', doors: [{ opening: { width: '14,5', height: '' } }] };
  expect(convertJob(job, 'mm')).toEqual({ ...job, units: 'mm' });
  expect(convertJob(job, 'in')).toBe(job);
});
