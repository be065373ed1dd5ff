import { describe, expect, it } from 'vitest';
import { boardDoor } from '#core/marks/board.ts';
import { cutOtherWay } from '#core/marks/cut-other-way.ts';
import { judgeMark } from '#core/marks/judge-mark.ts';
import { indexParts, locate } from '#core/marks/live-plan.ts';
import type { AcceptedMark, JobProgress, Mark } from '#core/marks/mark.ts';
import { applyMark, emptyProgress } from '#core/marks/progress.ts';
import { doneOf, nextStage, recordedOf } from '#core/marks/stage-state.ts';
import { disagreements } from '#core/measured/disagreements.ts';
import { keepAsMarked } from '#core/measured/as-marked.ts';
import { stepsOf } from '#core/pace/steps.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';

function planned(strip: 'notch' | 'rip'): Plan {
  const made = planFile({
    format: 1,
    job: 'Smokehouse',
    units: 'in',
    ways: { strip },
    doors: [{ mark: 'A', opening: { width: '16', height: '40' }, midRails: [{ width: '3', centre: '20' }] }],
  });
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
}

const plans = { notch: planned('notch'), rip: planned('rip') };
type Way = keyof typeof plans;
const stileOf = (way: Way) => {
  const stile = plans[way].doors[0]?.parts[0];
  if (stile?.part !== 'stile-left') throw new Error('no stile');
  return stile;
};
const { code } = stileOf('rip');

let count = 0;
function asked(stage: string, kind: Mark['mark'] = 'done'): Mark {
  count += 1;
  const station = stage === 'pare' ? 'bench' : stage === 'mortise' ? 'mortiser' : 'table-saw';
  return { id: `id-${count}`, code, station, stage, mark: kind, at: '2026-11-25T08:00:00Z' };
}
const judge = (way: Way, progress: JobProgress, mark: Mark) =>
  judgeMark(locate(indexParts(plans[way]), progress, mark.code), progress, mark);

/** What stands after these stages were done by the plan of a way, each of them judged. */
function after(way: Way, ...stages: string[]): JobProgress {
  return stages.reduce((progress, stage) => {
    const mark = asked(stage);
    const judged = judge(way, progress, mark);
    expect(judged, stage).toMatchObject({ ok: true });
    return take(progress, mark);
  }, before);
}

function take(progress: JobProgress, mark: Mark): JobProgress {
  const accepted: AcceptedMark = {
    seq: progress.seq + 1,
    received: mark.at,
    job: plans.rip.id,
    door: 'A-1',
    part: 'stile-left',
    mark,
  };
  return applyMark(progress, accepted);
}

/** The stile up to where its bead goes: everything before it done by hand of this test. */
const before = stileOf('rip')
  .stages.map(({ stage }) => stage)
  .filter((stage) => stage !== 'strip' && stage !== 'clean')
  .reduce((progress, stage) => take(progress, asked(stage)), emptyProgress(plans.rip.id));

const nextIn = (way: Way, progress: JobProgress) => {
  const found = locate(indexParts(plans[way]), progress, code);
  return found === null ? undefined : nextStage(found.part, found.door, progress)?.stage;
};

describe('a bead that was ripped away', () => {
  const ripped = after('rip', 'strip');

  it('counts as notched at both ends once the job is notched, on the board too', () => {
    expect(nextIn('notch', before)).toBe('notch-bottom');
    expect(nextIn('notch', ripped)).toBe('clean');
    const left = (progress: JobProgress) => {
      const [door] = plans.notch.doors;
      return door === undefined ? undefined : boardDoor(plans.notch.id, door, progress).done;
    };
    // One mark is recorded, and both notches count.
    expect(left(ripped)).toBe((left(before) ?? 0) + 2);
    expect(stepsOf(plans.notch, ripped).times).toHaveLength(stepsOf(plans.notch, before).times.length + 1);
  });

  it('is not notched a second time, and refuses to be', () => {
    expect(judge('notch', ripped, asked('notch-top'))).toMatchObject({ ok: false, code: 'already-done' });
  });

  it('is taken back end by end: the other end stays as it is', () => {
    const undone = take(ripped, asked('notch-bottom', 'undo'));
    expect(
      Object.keys(recordedOf(undone, code)).filter((each) => /strip|notch-(bottom|top)/.test(each)),
    ).toEqual(['notch-top']);
    expect(nextIn('notch', undone)).toBe('notch-bottom');
  });
});

describe('a bead that was notched away', () => {
  it('counts as ripped once both ends are notched, not before', () => {
    const one = after('notch', 'notch-bottom');
    expect(nextIn('rip', one)).toBe('strip');
    const both = after('notch', 'notch-bottom', 'notch-top');
    expect(nextIn('rip', both)).toBe('clean');
    expect(doneOf(take(both, asked('strip', 'undo')), code)).not.toHaveProperty('notch-top');
  });
});

describe('a mark that a station had kept from before the ways were changed', () => {
  it('is taken in either way, and counts for what comes to the same', () => {
    expect(judge('notch', before, asked('strip'))).toMatchObject({ ok: true });
    expect(nextIn('notch', take(before, asked('strip')))).toBe('clean');
    expect(judge('rip', before, asked('notch-top'))).toMatchObject({ ok: true });
    expect(nextIn('rip', take(before, asked('notch-top')))).toBe('strip');
    expect(judge('notch', take(before, asked('strip')), asked('strip', 'undo'))).toMatchObject({ ok: true });
  });

  it('is refused where what comes before it is not done; a notch asks for its own end alone', () => {
    const without = (stage: string) => take(before, asked(stage, 'undo'));
    expect(judge('notch', without('mitre-top'), asked('strip'))).toMatchObject({
      code: 'stage-not-reached',
      missing: [{ stage: 'mitre-top' }],
    });
    expect(judge('rip', without('mitre-top'), asked('notch-bottom'))).toMatchObject({ ok: true });
    expect(judge('rip', without('mitre-bottom'), asked('notch-bottom'))).toMatchObject({
      code: 'stage-not-reached',
    });
    expect(judge('notch', before, asked('slot'))).toMatchObject({ code: 'malformed' });
  });
});

describe('a change of ways', () => {
  it('names what is cut in the old way, and leaves no setting behind that disagrees', () => {
    const ripped = after('rip', 'strip');
    expect(cutOtherWay(plans.rip, plans.notch, ripped)).toEqual([
      { door: 'A-1', part: 'stile-left', stage: 'strip' },
    ]);
    expect(cutOtherWay(plans.rip, plans.notch, before)).toEqual([]);
    const kept = keepAsMarked([], plans.rip, plans.notch, ripped);
    expect(disagreements(plans.notch.doors, ripped, kept)).toEqual([]);
  });
});
