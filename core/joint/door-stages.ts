import { sum, times } from '../length/length.ts';
import { real, realOf } from '../length/real.ts';
import type { Joint } from './derive.ts';
import { exact, irrational, type PartDraft, type StageDraft } from './stage-draft.ts';

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
    { stage: 'dryfit', station: 'assembly', after: lastStages(parts), entries: [] },
    {
      stage: 'glue',
      station: 'assembly',
      after: ['dryfit', 'finish'],
      entries: [
        irrational('diagonal', diagonal, 'from.corner', 'why.diagonal', {
          width: builtWidth,
          height: builtHeight,
        }),
      ],
    },
    {
      stage: 'trim',
      station: 'fitting',
      after: ['glue'],
      entries: [
        exact('horn', spec.horn, 'from.rail-edge', 'why.horn'),
        exact('trimEachSide', joint.trimEachSide, 'from.edge', 'why.trimEachSide', trims),
        exact('trimEachEnd', joint.trimEachEnd, 'from.rail-edge', 'why.trimEachEnd', trims),
        exact('finishedWidth', joint.finishedWidth, 'from.between', 'why.finishedWidth', {
          opening: spec.opening.width,
          reveal: spec.reveal,
        }),
        exact('finishedHeight', joint.finishedHeight, 'from.between', 'why.finishedHeight', {
          opening: spec.opening.height,
          reveal: spec.reveal,
        }),
      ],
    },
  ];
}

/** The stages after which nothing more is done to a part before the door is put together dry; the panel's finish may come later. */
function lastStages(parts: readonly PartDraft[]): string[] {
  const last = new Set<string>();
  for (const { stages } of parts) {
    const followed = new Set<string>();
    for (const { stage, after } of stages)
      if (stage !== 'finish') for (const each of after) followed.add(each);
    for (const { stage } of stages) if (stage !== 'finish' && !followed.has(stage)) last.add(stage);
  }
  return [...last];
}
