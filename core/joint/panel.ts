import { half, type Length, less, sign, sum, times } from '../length/length.ts';
import { real, realOf } from '../length/real.ts';
import type { PartAsCut } from '../measured/measured.ts';
import { type PartName, panelName } from '../plan/part-name.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';
import { mill } from './frame-stages.ts';
import {
  type DraftOf,
  exact,
  irrational,
  type PartDraft,
  type StageDraft,
  usualStation,
} from './stage-draft.ts';
import type { Tooling } from './tooling.ts';

/** A panel's blank as it came out. */
export type PanelAsCut = Pick<PartAsCut, 'length' | 'width'>;

/** One panel for each sight opening, from the bottom up; only the topmost follows the arch. With `own` each as that came out. */
export function panels(
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
  own: PanelAsCut = {},
): PartDraft[] {
  return openings(joint).map((opening) => panel(opening, joint, tooling, profile, own));
}

/** How long each panel is as planned, with the grain: its sight opening and its hold at both ends, at its crown under an arch. */
export function panelLengths(
  joint: Joint,
): { readonly part: PartName; readonly length: Length; readonly sight: Length }[] {
  return openings(joint).map(({ part, sightHeight, arched }) => ({
    part,
    length: panelLength(joint, sightHeight, arched),
    sight: arched && joint.arc !== null ? sum(sightHeight, joint.arc.rise) : sightHeight,
  }));
}

interface Opening {
  readonly part: PartName;
  readonly sightHeight: Length;
  readonly arched: boolean;
}

function openings(joint: Joint): Opening[] {
  const last = joint.sightHeights.length - 1;
  return joint.sightHeights.map((sightHeight, k) => ({
    part: panelName(k + 1, last + 1),
    sightHeight,
    arched: k === last && joint.arc !== null,
  }));
}

function panelLength({ panelHold, arc }: Joint, sightHeight: Length, arched: boolean): Length {
  const sides = sum(sightHeight, times(panelHold, 2));
  return arched && arc !== null ? sum(sides, arc.rise) : sides;
}

function panel(
  { part, sightHeight, arched }: Opening,
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
  own: PanelAsCut,
): PartDraft {
  const { spec, panelHold: hold, arc } = joint;
  const twice = times(hold, 2);
  const width = own.width ?? sum(joint.sightWidth, twice);
  const height = own.length ?? panelLength(joint, sightHeight, arched);
  const sideHeight = arched && arc !== null ? less(height, arc.rise) : height;
  const thickness = spec.panel.thickness;
  const figures = { depth: spec.groove.depth, clearance: spec.panel.clearance, hold };
  const stages: StageDraft[] = [
    mill(
      height,
      width,
      thickness,
      {
        length: own.length === undefined ? 'why.panel-height' : 'why.as-measured',
        width: own.width === undefined ? 'why.panel-width' : 'why.as-measured',
      },
      {
        length: { ...figures, sightHeight, rise: less(height, sideHeight), height },
        width: { ...figures, sightWidth: joint.sightWidth, width },
      },
    ),
  ];
  if (arched && arc !== null)
    stages.push(cutout(joint, arc, { width, height, sideHeight, sightHeight }, own));
  const shaped = arched ? 'cutout' : 'mill';
  const raised = sign(tooling.raise) > 0;
  if (raised)
    stages.push({
      kind: 'raise',
      stage: 'raise',
      station: usualStation('raise'),
      after: [shaped],
      entries: {
        tongue: exact(tooling.tongue, 'from.front', 'why.tongue', {
          groove: spec.groove.width,
          fit: profile.slidingFit,
          tongue: tooling.tongue,
        }),
        depth: exact(tooling.raise, 'from.back', 'why.raise-depth', {
          thickness,
          tongue: tooling.tongue,
          depth: tooling.raise,
        }),
        band: exact(profile.panelBand, 'from.panel-edge', 'why.band', { depth: spec.groove.depth }),
      },
    });
  stages.push({
    kind: 'finish',
    stage: 'finish',
    station: usualStation('finish'),
    after: [raised ? 'raise' : shaped],
    entries: {},
  });
  return { part, length: height, width, thickness, stages };
}

/** Bandsawing the panel's head: concentric with the arch, larger by the panel's hold. */
function cutout(
  joint: Joint,
  arc: NonNullable<Joint['arc']>,
  size: {
    readonly width: Length;
    readonly height: Length;
    readonly sideHeight: Length;
    readonly sightHeight: Length;
  },
  own: PanelAsCut,
): DraftOf<'cutout'> {
  const hold = joint.panelHold;
  const radius = sum(arc.radius, hold);
  const pivot = sum(arc.pivot, hold);
  const chord = real(2 * Math.sqrt(Math.max(0, realOf(times(arc.rise, less(times(radius, 2), arc.rise))))));
  return {
    kind: 'cutout',
    stage: 'cutout',
    station: usualStation('cutout'),
    after: ['mill'],
    entries: {
      width: exact(size.width, 'from.edge', own.width === undefined ? 'why.panel-width' : 'why.as-measured', {
        sightWidth: joint.sightWidth,
        hold,
        width: size.width,
      }),
      height: exact(
        size.height,
        'from.panel-bottom',
        own.length === undefined ? 'why.panel-height' : 'why.as-measured',
        {
          sightHeight: size.sightHeight,
          hold,
          rise: arc.rise,
          height: size.height,
        },
      ),
      sideHeight: exact(
        size.sideHeight,
        'from.panel-bottom',
        own.length === undefined ? 'why.sideHeight' : 'why.sideHeight-measured',
        {
          sightHeight: size.sightHeight,
          hold,
          height: size.height,
          rise: arc.rise,
          sideHeight: size.sideHeight,
        },
      ),
      radius: exact(radius, 'from.pivot', 'why.panel-radius', { arch: arc.radius, hold, radius }),
      rise: exact(arc.rise, 'from.panel-flats', 'why.rise'),
      chord: irrational(chord, 'from.springings', 'why.panel-chord', { rise: arc.rise, radius }),
      flat: irrational(real((realOf(size.width) - chord) / 2), 'from.edge', 'why.panel-flat', {
        width: size.width,
        chord,
      }),
      pivot: exact(pivot, 'from.panel-flats', 'why.panel-pivot', { radius, rise: arc.rise, pivot }),
      centre: exact(half(size.width), 'from.edge', 'why.panel-centre', { width: size.width }),
    },
  };
}
