import { expect, test } from 'vitest';
import { readJob } from '#core/job/read-job.ts';
import { lostMarks } from '#core/marks/lost-marks.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import { type AsMarked, keepAsMarked } from '#core/measured/as-marked.ts';
import { type Disagreement, disagreements } from '#core/measured/disagreements.ts';
import { NOTHING_MEASURED } from '#core/measured/measured.ts';
import { readMeasured } from '#core/measured/read-measured.ts';
import type { Plan } from '#core/plan/plan.ts';
import { planJob } from '#core/planning/plan-job.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';

function planned(
  door: object,
  more: { defaults?: object; measured?: unknown; units?: 'in' | 'mm' } = {},
): Plan {
  const { units = 'in', defaults = {}, measured = {} } = more;
  const job = readJob({ format: 1, job: 'x', units, defaults, doors: [{ mark: 'A', ...door }] });
  const read = readMeasured(measured, units);
  if (!job.ok || !read.ok) throw new Error(JSON.stringify([job, read]));
  const plan = planJob(job.value, builtInProfile(units), { measured: read.value });
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  return plan.value;
}

const wide = (width: string, more: object = {}) => ({ opening: { width, height: '30' }, ...more });
const codeOf = (plan: Plan, part: string, door = 'A-1') =>
  plan.doors.find((each) => each.door === door)?.parts.find((each) => each.part === part)?.code ?? '';

/** Progress with these stages of these parts done, each by the mark of this number. */
function progressOf(plan: Plan, done: Readonly<Record<string, readonly string[]>>, seq = 1): JobProgress {
  const at = { seq, id: 'a', at: '', station: 'milling' as const };
  const parts = Object.entries(done).map(([part, stages]) => {
    const code = codeOf(plan, part);
    const table = Object.fromEntries(stages.map((stage) => [stage, at]));
    return [code, { code, door: 'A-1', part, number: 0, done: table, proved: {} }] as const;
  });
  return { job: 'x', seq, parts: Object.fromEntries(parts), doors: {} };
}

const told = (all: readonly Disagreement[]) =>
  all.map(
    ({ part, stage, name, was, now }) => `${part ?? 'door'} ${stage} ${name} ${was} → ${now ?? 'gone'}`,
  );

// A rail of the built-in door: opening 16 − two stiles of 2 1/4 + two beads of 3/16 + two tenons of 1 1/4 = 14 3/8.
test('what was cut is remembered over any number of saves, and agrees again when the plan comes back to it', () => {
  const first = planned(wide('16'));
  const progress = progressOf(first, { 'rail-top': ['mill'] });
  let kept: AsMarked[] = [];
  let before = first;
  const save = (plan: Plan) => {
    kept = keepAsMarked(kept, before, plan, progress);
    before = plan;
    return told(disagreements(plan.doors, progress, kept));
  };
  expect(save(planned(wide('17')))).toEqual(['rail-top mill length 14 3/8 → 15 3/8']);
  expect(save(planned(wide('18')))).toEqual(['rail-top mill length 14 3/8 → 16 3/8']);
  expect(save(planned(wide('18', { hinge: 'right' })))).toEqual(['rail-top mill length 14 3/8 → 16 3/8']);
  expect(save(planned(wide('16')))).toEqual([]);
  expect(kept).toEqual([]);
});

test('a mark that was taken back and made again says what was cut the second time', () => {
  const [first, second, third] = [planned(wide('16')), planned(wide('17')), planned(wide('18'))];
  const kept = keepAsMarked([], first, second, progressOf(first, { 'rail-top': ['mill'] }, 1));
  const again = progressOf(first, { 'rail-top': ['mill'] }, 9);
  expect(disagreements(second.doors, again, kept)).toEqual([]);
  expect(told(disagreements(third.doors, again, keepAsMarked(kept, second, third, again)))).toEqual([
    'rail-top mill length 15 3/8 → 16 3/8',
  ]);
});

test('a stage that the door has no more, and what was done to the whole door, are told too', () => {
  const before = planned(wide('16'), { defaults: { bead: '3/16' } });
  const now = planned(wide('17'), { defaults: { bead: '0' } });
  const { parts } = progressOf(before, { 'stile-left': ['bead'] });
  const at = { seq: 4, id: 'b', at: '', station: 'assembly' as const };
  const progress: JobProgress = { job: 'x', seq: 4, parts, doors: { 'A-1': { done: { glue: at } } } };
  const all = disagreements(now.doors, progress, keepAsMarked([], before, now, progress));
  expect(told(all)).toContain('stile-left bead bead 3/16 → gone');
  expect(told(all).filter((each) => each.startsWith('door glue diagonal 34.'))).toHaveLength(1);
});

test('a size that is measured says how it came out; only what follows from it was cut otherwise, and clearing it clears all', () => {
  const ordered = planned(wide('16'));
  const measured = planned(wide('16'), { measured: { thickness: '27/32' } });
  const progress = progressOf(ordered, { 'stile-left': ['mill', 'bead', 'groove'] });
  const kept = keepAsMarked([], ordered, measured, progress, NOTHING_MEASURED);
  expect(told(disagreements(measured.doors, progress, kept))).toEqual([
    'stile-left bead fillet 1/16 → 7/64',
    'stile-left bead cutterHeight 1/4 → 19/64',
    'stile-left groove fence 1/4 → 19/64',
  ]);
  const cleared = keepAsMarked(kept, measured, ordered, progress, NOTHING_MEASURED);
  expect(cleared).toEqual([]);
});

test('a door that is taken out and put back later still knows what it was cut by', () => {
  const two = planned(wide('16', { quantity: 2 }));
  const code = codeOf(two, 'rail-top', 'A-2');
  const at = { seq: 1, id: 'a', at: '', station: 'milling' as const };
  const one = { code, door: 'A-2', part: 'rail-top', number: 0, done: { mill: at }, proved: {} };
  const progress: JobProgress = { job: 'x', seq: 1, parts: { [code]: one }, doors: {} };
  const alone = planned(wide('17'));
  const kept = keepAsMarked([], two, alone, progress);
  expect(disagreements(alone.doors, progress, kept)).toEqual([]);
  const back = planned(wide('17', { quantity: 2 }));
  expect(told(disagreements(back.doors, progress, keepAsMarked(kept, alone, back, progress)))).toEqual([
    'rail-top mill length 14 3/8 → 15 3/8',
  ]);
});

test('a job converted to millimetres disagrees with nothing that was cut, but for what other tools set', () => {
  const before = planned(wide('16'));
  const exact = { thickness: '19.05', stile: { width: '57.15' }, bead: '4.7625' };
  const more = {
    ...exact,
    reveal: '1.5875',
    horn: '12.7',
    bottomRail: { width: '69.85' },
    topRail: { width: '57.15' },
    groove: { width: '6.35', depth: '9.525' },
    tenon: { length: '31.75', outerSetback: '9.525', innerSetback: '6.35', haunchClearance: '0.79375' },
    mortise: { clearance: '1.5875', endPlay: '0.79375' },
    panel: { thickness: '12.7', clearance: '1.5875' },
  };
  const now = planned({ opening: { width: '406.4', height: '762' } }, { units: 'mm', defaults: more });
  const progress = progressOf(before, {
    'stile-left': ['mill', 'bead', 'groove', 'mitre-bottom', 'mitre-top'],
    'rail-top': ['mill', 'bead', 'groove', 'shoulder', 'tenon'],
  });
  const all = disagreements(now.doors, progress, keepAsMarked([], before, now, progress));
  expect(told(all)).toEqual(['stile-left groove blade 4 61/80 → 6', 'rail-top groove blade 4 61/80 → 6']);
});

test('doors and parts that would stand in no plan any more are told with the number of their marks', () => {
  const before = planned(wide('16', { quantity: 2, midRails: [{ width: '3', centre: '15' }] }));
  const { parts } = progressOf(before, { 'rail-mid-1': ['mill', 'bead'], 'stile-left': ['mill'] });
  const at = { seq: 4, id: 'b', at: '', station: 'assembly' as const };
  const code = codeOf(before, 'panel-1', 'A-2');
  const panel = { code, door: 'A-2', part: 'panel-1', number: 0, done: { mill: at }, proved: { mill: at } };
  const progress: JobProgress = {
    job: 'x',
    seq: 4,
    parts: { ...parts, [code]: panel },
    doors: { 'A-2': { done: { dryfit: at } } },
  };
  expect(lostMarks(before, planned(wide('16')), progress)).toEqual([
    { door: 'A-1', part: 'rail-mid-1', marks: 2 },
    { door: 'A-2', marks: 3 },
  ]);
  expect(lostMarks(before, before, progress)).toEqual([]);
});

test('what is measured on a part itself is how it came out; what was cut by another number of it is told', () => {
  const before = planned(wide('16'));
  const sizes = readMeasured(
    { doors: { 'A-1': { parts: { 'rail-top': { length: '14 7/16' }, panel: { width: '12 3/32' } } } } },
    'in',
  );
  if (!sizes.ok) throw new Error(JSON.stringify(sizes.faults));
  const now = planned(wide('16'), {
    measured: {
      doors: { 'A-1': { parts: { 'rail-top': { length: '14 7/16' }, panel: { width: '12 3/32' } } } },
    },
  });
  const progress = progressOf(before, { 'rail-top': ['mill', 'shoulder'], panel: ['mill'] });
  const kept = keepAsMarked([], before, now, progress, sizes.value);
  // The stop moved from 1 1/4 by half of 1/16.
  expect(told(disagreements(now.doors, progress, kept))).toEqual(['rail-top shoulder stop 1 1/4 → 1 9/32']);
});
