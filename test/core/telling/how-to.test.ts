import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { paperStep } from '#core/settable/step.ts';
import { howTo } from '#core/telling/how-to.ts';
import worked from '../../fixtures/worked-example.json' with { type: 'json' };
import demo from '#main/demo/demo-job.json' with { type: 'json' };

function planned(file: unknown) {
  const plan = planFile(file);
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  return plan.value;
}
const [door] = planned(worked).doors;
const stageOf = (part: string, stage: string) => {
  const found = door?.parts.find((each) => each.part === part)?.stages.find((each) => each.stage === stage);
  if (found === undefined) throw new Error(`${part} has no ${stage}`);
  return found;
};

test('the stopped rip is told step by step with the worked example’s figures, each end with its own', () => {
  const strip = stageOf('stile-left', 'strip');
  expect(howTo(strip, { place: 'bottom', step: paperStep('in') })).toEqual([
    'Fence 2\u00a01/64 from the blade, at its right; blade 1 high. A test piece comes out 2\u00a01/64 wide.',
    'Draw a line on the fence at the blade’s front, at table level: 3 on your side of the arbor.',
    'Mark the stile 3 from its BOTTOM end. Lay it with its FRONT up, that end first, outer edge to the fence.',
    'Clamp a stop block 2\u00a063/64 past the line, on the far side. The end stops there, the mark 1/64 short of the line.',
    'Feed to the stop block. Switch off, wait until the blade has stopped, then lift the stile out.',
    expect.stringMatching(
      /^On the top face the last 1\.88\d* is still uncut: pare it, and the last 1\/64 all along, to the line\.$/,
    ),
  ]);
  expect(howTo(strip, { place: 'top', read: (value) => `<${value}>` })[2]).toBe(
    'Mark the stile <4> from its TOP end. Lay it with its BACK up, that end first, outer edge to the fence.',
  );
});

test('a mid rail’s groove, mitres and tenons are told for both edges, those of the others for one', () => {
  const rails = planned(demo).doors.flatMap(({ parts }) =>
    parts.filter(({ part }) => part.startsWith('rail')),
  );
  const kinds = ['groove', 'mitre', 'tenon'] as const;
  for (const kind of kinds) {
    const told = (mid: boolean) =>
      rails
        .filter(({ part }) => part.startsWith('rail-mid') === mid)
        .flatMap((part) =>
          part.stages.filter(({ stage }) => stage === kind).map((stage) => howTo(stage, { part }).join(' ')),
        );
    expect(told(true).length, kind).toBeGreaterThan(0);
    expect(told(false).length, kind).toBeGreaterThan(0);
    for (const each of told(true)) expect(each).toMatch(/both edges/i);
    for (const each of told(false)) expect(each).not.toMatch(/both edges/i);
  }
});

test('no line of any stage leaves a figure open', () => {
  let counted = 0;
  for (const { parts, stages } of planned(demo).doors)
    for (const part of [...parts, undefined])
      for (const stage of part?.stages ?? stages)
        for (const place of stage.places?.map(({ at }) => at) ?? [undefined])
          for (const line of howTo(stage, {
            ...(part === undefined ? {} : { part }),
            ...(place === undefined ? {} : { place }),
          })) {
            expect(line).not.toMatch(/[{}]/);
            counted += 1;
          }
  expect(counted).toBeGreaterThan(300);
});
