import { expect, test } from 'vitest';
import type { PlanDoor } from '#core/plan/plan.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { speakFaults } from '#core/telling/speak-faults.ts';
import { looseStage } from '../../loose-plan.ts';

type Fields = Readonly<Record<string, unknown>>;

function planned(units: 'in' | 'mm', defaults: Fields, ...doors: Fields[]) {
  const opening = units === 'in' ? { width: '16', height: '30' } : { width: '400', height: '760' };
  return planFile(
    {
      format: 1,
      job: 'x',
      units,
      defaults,
      doors: doors.map((door, k) => ({ mark: `D${k}`, opening, ...door })),
    },
    { why: 'en' },
  );
}

function doorsOf(...job: Parameters<typeof planned>): readonly PlanDoor[] {
  const plan = planned(...job);
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  return plan.value.doors;
}

test('each side is trimmed by half the oversize and its own reveal, in inches', () => {
  // 16 less 1/16 and 1/8; 30 less 3/32 and 1/32. Half of the oversizes 1/4 and 1/8 comes off beside each reveal.
  const [door] = doorsOf(
    'in',
    { reveal: { left: '1/16', right: '1/8', bottom: '3/32', top: '1/32' } },
    { oversize: { width: '1/4', height: '1/8' } },
  );
  expect(door?.values).toMatchObject({
    finishedWidth: '15 13/16',
    finishedHeight: '29 7/8',
    trim: { left: '3/16', right: '1/4', bottom: '5/32', top: '3/32' },
  });
  expect(door?.values).not.toHaveProperty('trimEachSide');
  expect(door?.values).not.toHaveProperty('trimEachEnd');
  const trim = looseStage(door ?? { stages: [] }, 'trim');
  expect(trim?.settings).toEqual({
    horn: '1/2',
    trimLeft: '3/16',
    trimRight: '1/4',
    trimBottom: '5/32',
    trimTop: '3/32',
    finishedWidth: '15 13/16',
    finishedHeight: '29 7/8',
  });
  const why = door?.stages.find(({ stage }) => stage === 'trim')?.why ?? {};
  expect(why.trimRight?.reason).toBe('half of the oversize 1/4, + reveal 1/8 = 1/4');
  expect(why.finishedWidth?.reason).toBe(
    'opening 16 − reveal 1/16 on the left − 1/8 on the right = 15\u00a013/16',
  );
});

test('where both sides are alike they are named once, and both ends likewise, in millimetres', () => {
  const [sides, ends] = doorsOf('mm', {}, { reveal: { top: 3 } }, { reveal: { left: '2.5' } });
  // 400 − 2 × 1.5 and 760 − 1.5 − 3; the other door 400 − 2.5 − 1.5 and 760 − 2 × 1.5.
  expect(sides?.values).toMatchObject({
    finishedWidth: '397',
    finishedHeight: '755 1/2',
    trim: { left: '1 1/2', right: '1 1/2', bottom: '1 1/2', top: '3' },
    trimEachSide: '1 1/2',
  });
  expect(sides?.values).not.toHaveProperty('trimEachEnd');
  expect(ends?.values).toMatchObject({ finishedWidth: '396', finishedHeight: '757', trimEachEnd: '1 1/2' });
  expect(ends?.values).not.toHaveProperty('trimEachSide');
});

test('a door’s group stands over the job’s one length side by side; one length replaces all four', () => {
  const trims = (job: unknown, door: unknown) =>
    Object.values(doorsOf('in', { reveal: job }, { reveal: door })[0]?.values.trim ?? {}).join(' ');
  expect(trims('3/32', { bottom: '1/8' })).toBe('3/32 3/32 1/8 3/32');
  expect(trims({ bottom: '1/8', left: '0' }, { left: '1/32' })).toBe('1/32 1/16 1/8 1/16');
  expect(trims({ bottom: '1/8', left: '0' }, '1/32')).toBe('1/32 1/32 1/32 1/32');
});

test('nothing can be put on: a side that would need it is named, with what would do', () => {
  // Built 1/4 narrower: 1/8 less on each side. A reveal of 1/8 on the right lets it; on the left 1/16 is missing.
  const plan = planned('in', {}, { oversize: { width: '-1/4' }, reveal: { right: '1/8' } });
  expect(plan.ok ? [] : speakFaults(plan.faults, 'en')).toEqual([
    {
      path: 'doors[0].reveal.left',
      code: 'oversize',
      message:
        'the door as built would end 1/16 inside its finished line (left): a reveal of at least 1/8 there, or an oversize of at least -1/8',
    },
  ]);
  expect(planned('in', {}, { oversize: { width: '-1/4' }, reveal: { left: '1/8', right: '1/8' } }).ok).toBe(
    true,
  );
});

test('what must hold at either end holds at the larger trim: the tenon’s cover at a top of 1/4', () => {
  const cover = (reveal: unknown) => {
    const plan = planned('in', {}, { reveal });
    if (!plan.ok) return plan.faults.map(({ path, code }) => `${path} ${code}`);
    return plan.value.doors[0]?.notes.filter(({ id }) => id === 'cover').map(({ figures }) => figures.cover);
  };
  // The outer setback is 3/8.
  expect(cover({ top: '5/16' })).toEqual(['1/16']);
  expect(cover({ bottom: '5/16' })).toEqual(['1/16']);
  expect(cover({ top: '3/8' })).toEqual(['doors[0].tenon.outerSetback cover']);
  expect(cover({ left: '3/8', right: '3/8' })).toEqual([]);
});

test('a side that nobody knows, and a reveal that is none, are refused by name', () => {
  const faults = (reveal: unknown) => {
    const plan = planned('in', { reveal }, {});
    return plan.ok ? [] : plan.faults.map(({ path, code }) => `${path} ${code}`);
  };
  expect(faults({ front: '1/8' })).toEqual(['defaults.reveal.front unknown-field']);
  expect(faults({ left: '-1/8', top: 'wide' })).toEqual([
    'defaults.reveal.left negative',
    'defaults.reveal.top length-form',
  ]);
  expect(faults(null)).toEqual(['defaults.reveal length-type']);
});
