import { expect, test } from 'vitest';
import { readJob } from '#core/job/read-job.ts';
import { followJob } from '#core/measured/follow-job.ts';
import { speakFaults } from '#core/telling/speak-faults.ts';
import { faultsOf, planned, set } from './plan-as-cut.ts';

const thick = (thickness: string) => ({ thickness });
const THREE = [thick('13/16'), thick('3/4'), thick('13/16')];

test('stock of one size came out so, of another as specified: each door has its own', () => {
  // 13/16 came out 25/32: (25/32 − 1/4)/2 = 17/64. The door of 3/4 keeps (3/4 − 1/4)/2.
  const plan = planned(THREE, { thickness: [{ of: '13/16', is: '25/32' }] });
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  expect(plan.value.doors.map((door) => set(door, 'rail-top', 'mill').thickness)).toEqual([
    '25/32',
    '3/4',
    '25/32',
  ]);
  expect(plan.value.doors.map((door) => set(door, 'stile-left', 'groove').fence)).toEqual([
    '17/64',
    '1/4',
    '17/64',
  ]);
});

test('in millimetres, of thickness and of groove, however the size is typed', () => {
  const plan = planned(
    [thick('19'), { thickness: '22', groove: { width: '8' } }],
    {
      thickness: [{ of: '22.0', is: '21.6' }],
      grooveWidth: [
        { of: 8, is: '8.2' },
        { of: '6', is: '6.1' },
      ],
    },
    'mm',
  );
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  // (19 − 6.1)/2 = 6.45 and (21.6 − 8.2)/2 = 6.7.
  expect(plan.value.doors.map((door) => set(door, 'rail-top', 'cheek'))).toEqual([
    { height: '6 9/20', thickness: '6 1/10' },
    { height: '6 7/10', thickness: '8 1/5' },
  ]);
});

test('the nearest counts: a part over its door over the list of the job', () => {
  const plan = planned(THREE, {
    thickness: [{ of: '13/16', is: '25/32' }],
    doors: { 'A-1': { thickness: '51/64', parts: { 'stile-left': { thickness: '13/16' } } } },
  });
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  const [first, , third] = plan.value.doors;
  const of = (door: typeof first, part: string) =>
    door === undefined ? '' : set(door, part, 'mill').thickness;
  expect([of(first, 'stile-left'), of(first, 'stile-right'), of(third, 'stile-left')]).toEqual([
    '13/16',
    '51/64',
    '25/32',
  ]);
});

test('one length over several sizes is refused, with the sizes and how to write it', () => {
  const plan = planned(THREE, { thickness: '25/32', grooveWidth: '17/64' });
  expect(plan.ok ? [] : speakFaults(plan.faults, 'en')).toEqual([
    {
      path: 'thickness',
      code: 'sizes-several',
      message:
        'the doors of this job are specified in several thicknesses (3/4, 13/16): say which came out so, as in [{"of": "3/4", "is": "25/32"}, {"of": "13/16", "is": "25/32"}]',
    },
  ]);
  expect(planned([thick('13/16'), thick('0.8125')], { thickness: '25/32' }).ok).toBe(true);
});

test.each([
  ['a size that no door has', [{ of: '7/8', is: '25/32' }], ['thickness[0].of size-unknown']],
  [
    'a size twice, typed otherwise',
    [
      { of: '3/4', is: '25/32' },
      { of: '0.75', is: '23/32' },
    ],
    ['thickness[1].of size-twice'],
  ],
  ['a line without what it is', [{ of: '3/4' }], ['thickness[0].is required']],
  ['a line with more', [{ of: '3/4', is: '25/32', at: '1' }], ['thickness[0].at unknown-field']],
  ['no length', [{ of: 'thick', is: 0 }], ['thickness[0].of length-form', 'thickness[0].is zero']],
  ['no line', [], []],
])('%s', (_what, thickness, faults) => {
  expect(faultsOf(planned(THREE, { thickness }))).toEqual(faults);
});

function jobOf(...doors: object[]) {
  const marked = doors.map((door, k) => ({ mark: `D${k}`, opening: { width: '16', height: '30' }, ...door }));
  const read = readJob({ format: 1, job: 'x', units: 'in', doors: marked });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}

test('one length over one size stays one while the job has one, and is said of that size once it has more', () => {
  const measured = { thickness: '25/32', doors: { 'D0-1': {} } };
  const one = jobOf(thick('3/4'));
  expect(followJob(measured, one, jobOf(thick('3/4'), thick('3/4')))).toEqual(measured);
  expect(followJob(measured, one, jobOf(thick('3/4'), thick('7/8')))).toEqual({
    ...measured,
    thickness: [{ of: '3/4', is: '25/32' }],
  });
});

test('what was measured of a size that no door has now is let go, and what cannot be read stays', () => {
  const list = [
    { of: '3/4', is: '25/32' },
    { of: '0.875', is: '27/32' },
    { of: 'thick', is: '1' },
  ];
  const both = jobOf(thick('3/4'), thick('7/8'));
  expect(followJob({ thickness: list }, both, both)).toEqual({ thickness: list });
  expect(followJob({ thickness: list.slice(0, 2) }, both, jobOf(thick('7/8')))).toEqual({
    thickness: [{ of: '0.875', is: '27/32' }],
  });
  expect(followJob({ thickness: list.slice(0, 1) }, both, jobOf(thick('7/8')))).toEqual({});
  expect(followJob({ thickness: list.slice(2) }, both, both)).toEqual({ thickness: list.slice(2) });
});
