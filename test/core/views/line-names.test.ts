import { expect, test } from 'vitest';
import type { Stroke } from '#core/drawing/figure.ts';
import { layOut } from '#core/drawing/layout.ts';
import { setupView } from '#core/views/setup-view.ts';
import { planFile } from '#core/planning/plan-file.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };

const planned = planFile(demo);
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const stile = planned.value.doors[0]?.parts.find(({ part }) => part === 'stile-left');

/** What is written in a stage's drawing, laid out as on the screen. */
function strokesOf(stageId: string): readonly Stroke[] {
  const stage = stile?.stages.find((each) => each.stage === stageId);
  if (stile === undefined || stage === undefined) throw new Error(`no ${stageId}`);
  return layOut(setupView(stile, stage, 'in'), { width: 650, height: 420, text: 20 }).strokes;
}

/** The words that stand in it. */
function wordsIn(stageId: string): string[] {
  return strokesOf(stageId).flatMap((stroke) => (stroke.kind === 'text' ? [stroke.text] : []));
}

/** What is written before each of its values, by setting. */
function namesIn(stageId: string): Record<string, string> {
  return Object.fromEntries(
    strokesOf(stageId).flatMap((stroke) =>
      stroke.kind === 'text' && stroke.role === 'dimension-name' ? [[stroke.name ?? '', stroke.text]] : [],
    ),
  );
}

test('a mortise’s drawing says where it starts and ends, no stop block', () => {
  expect(namesIn('mortise')).toMatchObject({ start: 'starts at', stop: 'ends at' });
});

test('what is set beside its line is named as set, as on the screen; the line itself by its own name', () => {
  expect(namesIn('mitre-bottom')).toMatchObject({
    sightEdge: 'sight edge: set',
    shoulderLine: 'shoulder line',
  });
  expect(wordsIn('mitre-bottom')).toContain('finished line');
});
