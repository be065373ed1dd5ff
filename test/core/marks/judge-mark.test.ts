import { expect, test } from 'vitest';
import { boardDoor } from '#core/marks/board.ts';
import { judgeMark } from '#core/marks/judge-mark.ts';
import { indexParts, livePlan, locate } from '#core/marks/live-plan.ts';
import type { AcceptedMark, JobProgress, Mark } from '#core/marks/mark.ts';
import { applyMark, emptyProgress, foldMarks } from '#core/marks/progress.ts';
import { nextStage } from '#core/marks/stage-state.ts';
import { planFile } from '#core/planning/plan-file.ts';

const planned = planFile({
  format: 1,
  job: 'Tide mill',
  units: 'in',
  doors: [{ mark: 'A', opening: { width: '16', height: '30' } }],
});
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const plan = planned.value;
const index = indexParts(plan);
const door = plan.doors[0];
if (door === undefined) throw new Error('no door');
const codeOf = (name: string) => door.parts.find(({ part }) => part === name)?.code ?? '';

let count = 0;
function mark(code: string, station: Mark['station'], stage: string, kind: Mark['mark'] = 'done'): Mark {
  count += 1;
  return { id: `id-${count}`, code, station, stage, mark: kind, at: '2026-11-25T08:00:00Z' };
}
const judge = (progress: JobProgress, asked: Mark) =>
  judgeMark(locate(index, progress, asked.code), progress, asked);

function accepted(
  progress: JobProgress,
  given: Mark,
  replacement?: AcceptedMark['replacement'],
): AcceptedMark {
  const found = locate(index, progress, given.code);
  return {
    seq: progress.seq + 1,
    received: given.at,
    job: plan.id,
    door: found?.door.door ?? '',
    part: found?.part.part ?? '',
    mark: given,
    ...(replacement === undefined ? {} : { replacement }),
  };
}

/** Does every stage of the parts in order, and of the door up to one; throws when one is refused. */
function doAll(until?: string): JobProgress {
  let progress = emptyProgress(plan.id);
  for (const part of door?.parts ?? [])
    for (const { stage, station } of part.stages) {
      const asked = mark(part.code, station, stage);
      const judged = judge(progress, asked);
      if (!judged.ok) throw new Error(`${part.part} ${stage}: ${judged.code}`);
      progress = applyMark(progress, accepted(progress, asked));
    }
  for (const { stage, station } of door?.stages ?? []) {
    if (stage === until) break;
    const asked = mark(codeOf('panel'), station, stage);
    const judged = judge(progress, asked);
    if (!judged.ok) throw new Error(`${stage}: ${judged.code}`);
    progress = applyMark(progress, accepted(progress, asked));
  }
  return progress;
}

const none = emptyProgress(plan.id);
const stile = codeOf('stile-left');

test('a stage is taken only after its forerunners, and says which are missing', () => {
  expect(judge(none, mark(stile, 'mortiser', 'mortise'))).toEqual({
    ok: false,
    code: 'stage-not-reached',
    missing: [{ stage: 'groove' }],
  });
});

test('each stage is taken at its own station only, and once', () => {
  expect(judge(none, mark(stile, 'bench', 'mill'))).toMatchObject({ ok: false, code: 'wrong-station' });
  const milled = applyMark(none, accepted(none, mark(stile, 'milling', 'mill')));
  expect(judge(milled, mark(stile, 'milling', 'mill'))).toMatchObject({ ok: false, code: 'already-done' });
});

test('only what is done, and nothing later stands on, is taken back', () => {
  expect(judge(none, mark(stile, 'milling', 'mill', 'undo'))).toMatchObject({ ok: false, code: 'not-done' });
  const milled = applyMark(none, accepted(none, mark(stile, 'milling', 'mill')));
  const beaded = applyMark(milled, accepted(milled, mark(stile, 'router-table', 'bead')));
  expect(judge(beaded, mark(stile, 'milling', 'mill', 'undo'))).toEqual({
    ok: false,
    code: 'later-stage-done',
    missing: [{ stage: 'bead' }],
  });
  const back = applyMark(beaded, accepted(beaded, mark(stile, 'router-table', 'bead', 'undo')));
  expect(back.parts[stile]?.done).toEqual(milled.parts[stile]?.done);
});

test('the door is put together when its parts are ready, the panel’s finish not needed for the dry fit', () => {
  const done = doAll('dryfit');
  const finish = mark(codeOf('panel'), 'bench', 'finish', 'undo');
  const unfinished = applyMark(done, accepted(done, finish));
  const dry = mark(stile, 'assembly', 'dryfit');
  expect(judge(unfinished, dry).ok).toBe(true);
  const fitted = applyMark(unfinished, accepted(unfinished, dry));
  expect(judge(fitted, mark(stile, 'assembly', 'glue'))).toEqual({
    ok: false,
    code: 'stage-not-reached',
    missing: [{ part: 'panel', stage: 'finish' }],
  });
});

test('with everything done the board says so and nothing comes next', () => {
  const done = doAll();
  const row = boardDoor(plan.id, door, done);
  expect(row).toMatchObject({ stage: 'done', done: row.of });
  const panel = door.parts.find(({ part }) => part === 'panel');
  expect(panel && nextStage(panel, door, done)).toBeNull();
});

test('a spoiled blank is refused by name and its replacement begins anew under its own code', () => {
  const milled = applyMark(none, accepted(none, mark(stile, 'milling', 'mill')));
  const spoiling = mark(stile, 'router-table', 'bead', 'spoiled');
  expect(judge(milled, spoiling).ok).toBe(true);
  const spoiled = applyMark(milled, accepted(milled, spoiling, { code: '123456789A', number: 1 }));
  expect(judge(spoiled, mark(stile, 'router-table', 'bead'))).toMatchObject({
    ok: false,
    code: 'spoiled',
    figures: { replacedBy: '123456789A' },
  });
  expect(livePlan(plan, spoiled).doors[0]?.parts[0]?.code).toBe('123456789A');
  expect(judge(spoiled, mark('123456789A', 'router-table', 'bead'))).toMatchObject({
    ok: false,
    code: 'stage-not-reached',
  });
  expect(judge(spoiled, mark('123456789A', 'milling', 'mill')).ok).toBe(true);
});

test('marks folded one by one, at once, or twice come to the same', () => {
  const marks: AcceptedMark[] = [];
  let progress = none;
  for (const { stage, station } of door.parts[0]?.stages ?? []) {
    const one = accepted(progress, mark(stile, station, stage));
    marks.push(one);
    progress = applyMark(progress, one);
  }
  expect(foldMarks(none, marks)).toEqual(progress);
  expect(foldMarks(progress, marks)).toEqual(progress);
});
