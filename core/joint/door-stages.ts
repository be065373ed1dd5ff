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
        ...trimEntries(joint),
      },
    },
  ];
}

/** What comes off each side, named once where both sides or both ends are alike, and what is left then. */
function trimEntries({ spec, trim, finishedWidth, finishedHeight }: Joint) {
  const { opening, oversize, reveal } = spec;
  const side = (at: 'left' | 'right') =>
    exact(trim[at], 'from.edge', 'why.trimEachSide', {
      oversizeWidth: oversize.width,
      reveal: reveal[at],
    });
  const end = (at: 'bottom' | 'top') =>
    exact(trim[at], 'from.rail-edge', 'why.trimEachEnd', {
      oversizeHeight: oversize.height,
      reveal: reveal[at],
    });
  const sides = trim.left.equals(trim.right);
  const ends = trim.bottom.equals(trim.top);
  return {
    trimEachSide: sides ? side('left') : undefined,
    trimLeft: sides ? undefined : side('left'),
    trimRight: sides ? undefined : side('right'),
    trimEachEnd: ends ? end('bottom') : undefined,
    trimBottom: ends ? undefined : end('bottom'),
    trimTop: ends ? undefined : end('top'),
    finishedWidth: sides
      ? exact(finishedWidth, 'from.between', 'why.finishedWidth', {
          opening: opening.width,
          reveal: reveal.left,
        })
      : exact(finishedWidth, 'from.between', 'why.finishedWidth-apart', {
          opening: opening.width,
          left: reveal.left,
          right: reveal.right,
        }),
    finishedHeight: ends
      ? exact(finishedHeight, 'from.between', 'why.finishedHeight', {
          opening: opening.height,
          reveal: reveal.bottom,
        })
      : exact(finishedHeight, 'from.between', 'why.finishedHeight-apart', {
          opening: opening.height,
          bottom: reveal.bottom,
          top: reveal.top,
        }),
  };
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
