import { expect, test } from 'vitest';
import { layOut } from '#core/drawing/layout.ts';
import { setupView } from '#core/views/setup-view.ts';
import { planFile } from '#core/planning/plan-file.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };

const planned = planFile(demo);
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const stile = planned.value.doors[0]?.parts.find(({ part }) => part === 'stile-left');

/** What is written before each value of a stage's drawing, by setting. */
function namesIn(stageId: string): Record<string, string> {
  const stage = stile?.stages.find((each) => each.stage === stageId);
  if (stile === undefined || stage === undefined) throw new Error(`no ${stageId}`);
  const { strokes } = layOut(setupView(stile, stage, 'in'), { width: 650, height: 420, text: 20 });
  return Object.fromEntries(
    strokes.flatMap((stroke) =>
      stroke.kind === 'text' && stroke.role === 'dimension-name' ? [[stroke.name ?? '', stroke.text]] : [],
    ),
  );
}

test('a mortise’s drawing says where it starts and ends, no stop block', () => {
  expect(namesIn('mortise')).toMatchObject({ start: 'starts at', stop: 'ends at' });
});

test('what stands beside a number set is called the line, and a height is the blade’s', () => {
  expect(namesIn('mitre-bottom')).toMatchObject({ sightEdge: 'line at', shoulderLine: 'shoulder line' });
});
