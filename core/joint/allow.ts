import { limitsFor } from '../length/limits.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import { type Allowances, allowancesAt, allowancesOf, type AllowSource } from './allow-rules.ts';
import type { Joint } from './derive.ts';
import type { Entry, PartDraft, StageDraft } from './stage-draft.ts';
import { toolingFor } from './tooling.ts';

/**
 * A part's draft, each setting with how far it may be off while all others are exact, where that is known: exact lengths
 * in the job's units, never under zero.
 */
export function allowed(draft: PartDraft, joint: Joint, profile: ShopProfile): PartDraft {
  const source: AllowSource = {
    joint,
    tooling: toolingFor(joint, profile),
    limits: limitsFor(profile.units),
    slidingFit: profile.slidingFit,
    part: draft.part,
    width: draft.width,
  };
  return { ...draft, stages: draft.stages.map((stage) => allowedStage(stage, source)) };
}

function allowedStage(stage: StageDraft, source: AllowSource): StageDraft {
  const { kind } = stage;
  const given = {
    ...stage,
    entries: withAllow(stage.entries, allowancesOf(kind, source)),
    ...(stage.places === undefined
      ? {}
      : {
          places: stage.places.map((place) => ({
            ...place,
            entries: withAllow(place.entries, allowancesAt(kind, place.at, source)),
          })),
        }),
  };
  // The same entries under the same names, each with one field more: what it was a draft of, it still is.
  return given as StageDraft;
}

function withAllow(
  entries: Readonly<Record<string, Entry | undefined>>,
  allowances: Allowances,
): Readonly<Record<string, Entry | undefined>> {
  return Object.fromEntries(
    Object.entries(entries).map(([name, entry]) => {
      const allow = Object.hasOwn(allowances, name) ? allowances[name] : undefined;
      return [name, entry === undefined || allow === undefined ? entry : { ...entry, allow }];
    }),
  );
}
