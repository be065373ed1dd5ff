import { sum, times } from '../length/length.ts';
import { real, realOf } from '../length/real.ts';
import type { StageId } from '../stages/stage-id.ts';
import type { Joint } from './derive.ts';
import { exact, irrational, type PartDraft, type StageDraft, usualStation } from './stage-draft.ts';

/** Dry fit, glue-up and trimming: what is done to the door as a whole. */
export function doorStages(joint: Joint, parts: readonly PartDraft[]): StageDraft[] {
  const { builtWidth, builtHeight, spec } = joint;
  const diagonal = real(
    Math.sqrt(realOf(sum(times(builtWidth, builtWidth), times(builtHeight, builtHeight)))),
  );
  const trims = {
    oversizeWidth: spec.oversize.width,
    oversizeHeight: spec.oversize.height,
    reveal: spec.reveal,
  };
  return [
    {
      kind: 'dryfit',
      stage: 'dryfit',
      station: usualStation('dryfit'),
      after: lastStages(parts),
      entries: {},
    },
    {
      kind: 'glue',
      stage: 'glue',
      station: usualStation('glue'),
      after: ['dryfit', 'finish'],
      entries: {
        diagonal: irrational(diagonal, 'from.corner', 'why.diagonal', {
          width: builtWidth,
          height: builtHeight,
        }),
      },
    },
    {
      kind: 'trim',
      stage: 'trim',
      station: usualStation('trim'),
      after: ['glue'],
      entries: {
        horn: exact(spec.horn, 'from.rail-edge', 'why.horn'),
        trimEachSide: exact(joint.trimEachSide, 'from.edge', 'why.trimEachSide', trims),
        trimEachEnd: exact(joint.trimEachEnd, 'from.rail-edge', 'why.trimEachEnd', trims),
        finishedWidth: exact(joint.finishedWidth, 'from.between', 'why.finishedWidth', {
          opening: spec.opening.width,
          reveal: spec.reveal,
        }),
        finishedHeight: exact(joint.finishedHeight, 'from.between', 'why.finishedHeight', {
          opening: spec.opening.height,
          reveal: spec.reveal,
        }),
      },
    },
  ];
}

/** The stages after which nothing more is done to a part before the door is put together dry; the panel's finish may come later. */
function lastStages(parts: readonly PartDraft[]): StageId[] {
  const last = new Set<StageId>();
  for (const { stages } of parts) {
    const followed = new Set<string>();
    for (const { stage, after } of stages)
      if (stage !== 'finish') for (const each of after) followed.add(each);
    for (const { stage } of stages) if (stage !== 'finish' && !followed.has(stage)) last.add(stage);
  }
  return [...last];
}
