import type { BuiltSpec } from '../job/job.ts';
import { deriveJoint } from '../joint/derive.ts';
import { type PanelAsCut, panels } from '../joint/panel.ts';
import { railFit } from '../joint/rail-fit.ts';
import { rails } from '../joint/rail.ts';
import { exact, type PartDraft, type StageDraft } from '../joint/stage-draft.ts';
import { stileAsCut, topHornOf } from '../joint/stile-as-cut.ts';
import { stiles } from '../joint/stile.ts';
import { toolingFor } from '../joint/tooling.ts';
import type { Length } from '../length/length.ts';
import { specForPart } from '../measured/apply-measured.ts';
import { type DoorAsCut, partSizes } from '../measured/measured.ts';
import { readPart } from '../plan/part-name.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';

/** Every part of a door before it is printed, from its stiles to its panels. */
export function draftsOf(spec: BuiltSpec, profile: ShopProfile, own: PanelAsCut = {}): PartDraft[] {
  const joint = deriveJoint(spec);
  const tooling = toolingFor(joint, profile);
  return [
    ...stiles(joint, tooling, profile),
    ...rails(joint, tooling, profile),
    ...panels(joint, tooling, profile, own),
  ];
}

/** A part's draft by what was measured on it, and on those that it joins; the draft itself where that is nothing. */
export function partAsCut(
  draft: PartDraft,
  spec: BuiltSpec,
  asCut: DoorAsCut | null,
  profile: ShopProfile,
): PartDraft {
  if (asCut === null) return draft;
  const { length, width } = partSizes(asCut, draft.part);
  const seen = specForPart(spec, asCut, draft.part);
  const own = seen ?? spec;
  const redrawn = (by: BuiltSpec, blank: PanelAsCut = {}): PartDraft =>
    draftsOf(by, profile, blank).find(({ part }) => part === draft.part) ?? draft;
  const usual = () => (seen === null ? draft : redrawn(seen));
  switch (readPart(draft).kind) {
    case 'stile': {
      if (length === undefined) return usual();
      const horn = topHornOf(deriveJoint(own), length);
      return stileAsCut(usual(), redrawn({ ...own, horn }), length);
    }
    case 'rail': {
      const fit = length === undefined ? null : railFit(deriveJoint(own), length);
      if (fit?.kind !== 'fits' || length === undefined) return usual();
      return ofLength(redrawn({ ...own, tenon: { ...own.tenon, length: fit.stop } }), length);
    }
    case 'panel': {
      if (length === undefined && width === undefined) return usual();
      return redrawn(own, {
        ...(length === undefined ? {} : { length }),
        ...(width === undefined ? {} : { width }),
      });
    }
  }
}

/** The same, its length said to be measured. */
function ofLength(draft: PartDraft, length: Length): PartDraft {
  const stages = draft.stages.map((stage): StageDraft =>
    stage.kind === 'mill'
      ? { ...stage, entries: { ...stage.entries, length: exact(length, 'from.end', 'why.as-measured') } }
      : stage,
  );
  return { ...draft, length, stages };
}
