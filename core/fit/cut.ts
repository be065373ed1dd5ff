import { type Length, length, less, sum, ZERO } from '../length/length.ts';
import { readPrinted } from '../length/read-printed.ts';
import type { Units } from '../length/units.ts';
import type { PlaceName } from '../plan/place-name.ts';
import type { PlanPart } from '../plan/plan.ts';
import { placeOf, stageNamed, stageOf, stagesOf } from '../plan/stage-of.ts';
import type { Tolerances } from '../shop/shop-profile.ts';
import type { StageId } from '../stages/stage-id.ts';
import type { Source } from './closure.ts';

/** A length that is cut, and the settings that it hangs on. */
export interface Cut {
  readonly value: Length;
  readonly sources: readonly Source[];
}

/** Something that counts so many times. */
export const ONCE = length(1);
export const TWICE = length(2);
export const BY_HALF = length(1, 2);

/** A setting of a part as something that may be off. */
export function source(
  part: PlanPart,
  stage: StageId,
  setting: string,
  by: keyof Tolerances,
  times: Length = ONCE,
  at?: PlaceName,
): Source {
  return { part: part.part, stage, setting, by, times, ...(at === undefined ? {} : { at }) };
}

/** The same settings, counting so many times each. */
export function counted(sources: readonly Source[], times: Length): Source[] {
  return sources.map((each) => ({ ...each, times }));
}

/** How deep a member's groove is, from its sight edge. */
export function grooveOf(part: PlanPart, units: Units): Cut {
  for (const kind of ['groove', 'slot'] as const) {
    const stage = stageOf(part, kind);
    if (stage !== undefined)
      return {
        value: readPrinted(stage.settings.depth, units),
        sources: [source(part, kind, 'depth', 'height')],
      };
  }
  throw new Error(`${part.part} has no groove`);
}

/** How far below a stile's sight edge the shoulder of a rail lies: where its bead is cut away; nothing without one. */
export function landOf(stile: PlanPart, place: PlaceName, units: Units): Cut {
  const notch = stagesOf(stile, 'notch').find(({ stage }) => stage === `notch-${place}`);
  if (notch !== undefined)
    return {
      value: readPrinted(notch.settings.height, units),
      sources: [source(stile, notch.stage, 'height', 'height')],
    };
  const strip = stageOf(stile, 'strip');
  if (strip === undefined) return { value: ZERO, sources: [] };
  return {
    value: less(readPrinted(stile.width, units), readPrinted(strip.settings.fence, units)),
    sources: [source(stile, 'strip', 'fence', 'fence'), source(stile, 'mill', 'width', 'milling')],
  };
}

/** How long a rail is from shoulder to shoulder. */
export function shoulderToShoulder(rail: PlanPart, units: Units): Cut {
  const stop = stopOf(rail, units);
  return {
    value: less(readPrinted(rail.length, units), stop.value, stop.value),
    sources: [...counted(stop.sources, TWICE), source(rail, 'mill', 'length', 'milling')],
  };
}

/** How long a rail's tenon is. */
export function stopOf(rail: PlanPart, units: Units): Cut {
  const stage = stageOf(rail, 'shoulder');
  if (stage === undefined) throw new Error(`${rail.part} has no shoulder`);
  return {
    value: readPrinted(stage.settings.stop, units),
    sources: [source(rail, 'shoulder', 'stop', 'stop')],
  };
}

/** The cut of a stile by which a rail is placed along it: its mitre there, or without a bead where its mortise starts. */
export function placing(stile: PlanPart, mitre: StageId, at: PlaceName): Source {
  return stageNamed(stile, mitre) === undefined
    ? source(stile, 'mortise', 'start', 'stop', ONCE, at)
    : source(stile, mitre, 'sightEdge', 'stop');
}

/** Where a mortise starts and stops; undefined where there is none. */
export function mortiseAt(
  stile: PlanPart,
  at: PlaceName,
  units: Units,
): { readonly depth: Length; readonly start: Length; readonly stop: Length } | undefined {
  const mortise = stageOf(stile, 'mortise');
  const place = mortise === undefined ? undefined : placeOf(mortise, at);
  if (mortise === undefined || place?.at !== at) return undefined;
  return {
    depth: readPrinted(mortise.settings.depthFromEdge, units),
    start: readPrinted(place.settings.start, units),
    stop: readPrinted(place.settings.stop, units),
  };
}

/** Lengths added up. */
export const added = (...cuts: readonly Cut[]): Length =>
  cuts.reduce((all, { value }) => sum(all, value), ZERO);
