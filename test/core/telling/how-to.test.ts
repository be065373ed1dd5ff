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
    'Draw a line on the fence at the blade’s front, at table level: 3 on your side of the arbor.',
    'Mark the stile 3 from its BOTTOM end. Lay it with its FRONT up, that end first.',
    'Clamp a stop block 2\u00a063/64 past the line, on the far side: the end stops there. The mark ends just short of the line, and the chisel takes the rest.',
    'Feed to the stop block. Switch off, wait until the blade has stopped, then lift the stile out.',
    expect.stringMatching(/^On the top face the last 1\.88\d* is still uncut: pare it to the line\.$/),
  ]);
  expect(howTo(strip, { place: 'top', read: (value) => `<${value}>` })[1]).toBe(
    'Mark the stile <4> from its TOP end. Lay it with its BACK up, that end first.',
  );
});

test('a mid rail’s groove, mitres and tenons are told for both edges, those of the others for one', () => {
  for (const stage of ['groove', 'tenon']) {
    const one = stageOf('rail-bottom', stage);
    expect(howTo(one, { part: 'rail-mid-1' }).join(' ')).toMatch(/both edges/i);
    expect(howTo(one, { part: 'rail-bottom' }).join(' ')).not.toMatch(/both edges/i);
  }
});

test('no line of any stage leaves a figure open', () => {
  let counted = 0;
  for (const { parts, stages } of planned(demo).doors)
    for (const { part, stages: own } of [...parts, { part: undefined, stages }])
      for (const stage of own)
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
