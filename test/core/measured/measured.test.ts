import { looseStage } from '../../loose-plan.ts';
import { expect, test } from 'vitest';
import { readJob } from '#core/job/read-job.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import { keepAsMarked } from '#core/measured/as-marked.ts';
import { disagreements } from '#core/measured/disagreements.ts';
import { NOTHING_MEASURED } from '#core/measured/measured.ts';
import { readMeasured } from '#core/measured/read-measured.ts';
import type { Plan } from '#core/plan/plan.ts';
import { planJob } from '#core/planning/plan-job.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';

const job = readJob({
  format: 1,
  job: 'x',
  units: 'in',
  ways: { strip: 'rip' },
  doors: [{ mark: 'A', quantity: 2, opening: { width: '16', height: '30' } }],
});

function planned(measured: unknown = {}): Plan {
  const read = readMeasured(measured, 'in');
  if (!job.ok || !read.ok) throw new Error(JSON.stringify([job, read]));
  const plan = planJob(job.value, builtInProfile('in'), { measured: read.value });
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  return plan.value;
}

const setting = (plan: Plan, door: string, part: string, stage: string, name: string) =>
  looseStage(
    plan.doors.find((each) => each.door === door)?.parts.find((each) => each.part === part) ?? { stages: [] },
    stage,
  )?.settings[name];

test('stock that came out thinner moves everything that is centred in it', () => {
  const plan = planned({ thickness: '23/32' });
  expect(setting(plan, 'A-1', 'stile-left', 'mill', 'thickness')).toBe('23/32');
  expect(setting(plan, 'A-1', 'stile-left', 'groove', 'fence')).toBe('15/64');
  expect(setting(plan, 'A-2', 'rail-top', 'cheek', 'height')).toBe('15/64');
});

test('one stile wider than ordered makes its door’s rails and panel shorter, and no other door’s', () => {
  const plan = planned({ doors: { 'A-1': { parts: { 'stile-right': { width: '2 5/16' } } } } });
  const before = planned();
  const length = (of: Plan, door: string, part: string) =>
    of.doors.find((each) => each.door === door)?.parts.find((each) => each.part === part);
  // 16 − 4 1/2 + 3/8 + 2 1/2 = 14 3/8; a stile 1/16 wider takes 1/16.
  expect(length(before, 'A-1', 'rail-top')?.length).toBe('14 3/8');
  expect(length(plan, 'A-1', 'rail-top')?.length).toBe('14 5/16');
  expect(length(plan, 'A-2', 'rail-top')?.length).toBe('14 3/8');
  expect(length(plan, 'A-1', 'stile-left')?.width).toBe('2 1/4');
  expect(setting(plan, 'A-1', 'stile-right', 'strip', 'fence')).toBe('2 1/8');
  expect(setting(plan, 'A-1', 'stile-left', 'strip', 'fence')).toBe('2 1/16');
});

test('a groove measured on a stile changes its own mortise, not the other one’s', () => {
  const plan = planned({ doors: { 'A-1': { parts: { 'stile-left': { grooveWidth: '17/64' } } } } });
  expect(setting(plan, 'A-1', 'stile-left', 'pare', 'width')).toBe('17/64');
  expect(setting(plan, 'A-1', 'stile-right', 'pare', 'width')).toBe('1/4');
  expect(setting(plan, 'A-2', 'stile-left', 'pare', 'width')).toBe('1/4');
});

test('what was cut already and no longer agrees is listed by name; what is not yet cut only follows', () => {
  const before = planned();
  const rail = before.doors[0]?.parts.find(({ part }) => part === 'rail-top');
  const code = rail?.code ?? '';
  const done = { mill: { seq: 1, id: 'a', at: '', station: 'milling' as const } };
  const progress: JobProgress = {
    job: 'x',
    seq: 1,
    parts: { [code]: { code, door: 'A-1', part: 'rail-top', number: 0, done, proved: {} } },
    doors: {},
  };
  const now = planned({ doors: { 'A-1': { parts: { 'stile-left': { width: '2 5/16' } } } } });
  const kept = keepAsMarked([], before, now, progress, NOTHING_MEASURED);
  expect(disagreements(now.doors, progress, kept)).toEqual([
    { code, door: 'A-1', part: 'rail-top', stage: 'mill', name: 'length', was: '14 3/8', now: '14 5/16' },
  ]);
});

test('a wrong measurement is refused with its place', () => {
  const read = readMeasured(
    {
      thickness: 'thick',
      doors: { 'A-1': { parts: { 'stile-left': { width: '-2', length: 'long', depth: '1' } } } },
    },
    'in',
  );
  expect(read.ok ? [] : read.faults.map(({ path, code }) => `${path} ${code}`)).toEqual([
    'doors.A-1.parts.stile-left.depth unknown-field',
    'doors.A-1.parts.stile-left.length length-form',
    'doors.A-1.parts.stile-left.width negative',
    'thickness length-form',
  ]);
});

test('one door of two alike has an opening and a survey of its own, and keeps its codes', () => {
  const survey = {
    widthBottom: '17',
    widthTop: '17',
    heightLeft: '31',
    heightRight: '31',
    diagonalUp: '35.3553',
    diagonalDown: '35.3553',
  };
  const plan = planned({ doors: { 'A-2': { opening: { width: '17', height: '31' }, survey } } });
  const codes = (of: Plan) => of.doors.flatMap(({ parts }) => parts.map(({ code }) => code));
  expect(codes(plan)).toEqual(codes(planned()));
  expect(plan.doors.map(({ values }) => [values.finishedWidth, values.survey === undefined])).toEqual([
    ['15 7/8', true],
    ['16 7/8', false],
  ]);
  const short = readMeasured({ doors: { 'A-1': { survey: { widthBottom: '17' } } } }, 'in');
  expect(short.ok ? [] : short.faults.map(({ path }) => path)).toContain('doors.A-1.survey.diagonalUp');
});
