import { half, type Length, less } from '../length/length.ts';
import type { Joint } from './derive.ts';
import { exact, type PartDraft, type PlaceDraft, type StageDraft } from './stage-draft.ts';

/**
 * The horn at the top of a stile that came out so long. All is laid out from its bottom end, where the horn is as
 * specified, so that its top one takes the whole error; under 0 the stile ends below the door's top as built.
 */
export function topHornOf({ spec, builtHeight }: Joint, length: Length): Length {
  return less(length, builtHeight, spec.horn);
}

/**
 * A stile as it came out, from its draft with the horn as specified and from one with the horn that its top has: what is
 * measured from its top end is taken from the second.
 */
export function stileAsCut(bottom: PartDraft, top: PartDraft, length: Length): PartDraft {
  const stages = bottom.stages.map((stage): StageDraft => {
    const other = top.stages.find((each) => each.stage === stage.stage);
    if (stage.kind === 'mill')
      return {
        ...stage,
        entries: { ...stage.entries, length: exact(length, 'from.end', 'why.as-measured') },
      };
    if ('fromEnd' in stage.entries && stage.entries.fromEnd.value.value === 'top') return other ?? stage;
    if (stage.kind === 'mortise' && other?.kind === 'mortise')
      return { ...stage, places: placesOf(stage.places, other.places) };
    if (stage.kind === 'strip' && other?.kind === 'strip')
      return { ...stage, places: placesOf(stage.places, other.places) };
    return stage;
  });
  return { ...bottom, length, stages };
}

function placesOf<P extends PlaceDraft<'mortise' | 'strip'>>(bottom: readonly P[], top: readonly P[]): P[] {
  return bottom.map((place) => (place.at === 'top' ? (top.find(({ at }) => at === 'top') ?? place) : place));
}

/** What both horns would be if they shared a stile of this length; under 0 it is shorter than the door as built. */
export function sharedHorn({ builtHeight }: Joint, length: Length): Length {
  return half(less(length, builtHeight));
}
