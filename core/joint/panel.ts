import { half, type Length, less, sign, sum, times } from '../length/length.ts';
import { real, realOf } from '../length/real.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';
import { mill } from './frame-stages.ts';
import { exact, irrational, type PartDraft, type StageDraft } from './stage-draft.ts';
import type { Tooling } from './tooling.ts';

/** One panel for each sight opening, from the bottom up; only the topmost follows the arch. */
export function panels(joint: Joint, tooling: Tooling, profile: ShopProfile): PartDraft[] {
  return openings(joint).map(({ part, sightHeight, arched }) =>
    panel(part, sightHeight, arched, joint, tooling, profile),
  );
}

/** How long each panel is, with the grain: its sight opening and its hold at both ends, at its crown under an arch. */
export function panelLengths(joint: Joint): { readonly part: string; readonly length: Length }[] {
  return openings(joint).map(({ part, sightHeight, arched }) => ({
    part,
    length: panelLength(joint, sightHeight, arched),
  }));
}

function openings(joint: Joint): { part: string; sightHeight: Length; arched: boolean }[] {
  const last = joint.sightHeights.length - 1;
  return joint.sightHeights.map((sightHeight, k) => ({
    part: last === 0 ? 'panel' : `panel-${k + 1}`,
    sightHeight,
    arched: k === last && joint.arc !== null,
  }));
}

function panelLength({ panelHold, arc }: Joint, sightHeight: Length, arched: boolean): Length {
  const sides = sum(sightHeight, times(panelHold, 2));
  return arched && arc !== null ? sum(sides, arc.rise) : sides;
}

function panel(
  part: string,
  sightHeight: Length,
  arched: boolean,
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
): PartDraft {
  const { spec, panelHold: hold, arc } = joint;
  const twice = times(hold, 2);
  const width = sum(joint.sightWidth, twice);
  const sideHeight = sum(sightHeight, twice);
  const height = panelLength(joint, sightHeight, arched);
  const thickness = spec.panel.thickness;
  const figures = { depth: spec.groove.depth, clearance: spec.panel.clearance, hold };
  const stages: StageDraft[] = [
    mill(
      height,
      width,
      thickness,
      { length: 'why.panel-height', width: 'why.panel-width' },
      {
        length: { ...figures, sightHeight, rise: less(height, sideHeight), height },
        width: { ...figures, sightWidth: joint.sightWidth, width },
      },
    ),
  ];
  if (arched && arc !== null) stages.push(cutout(joint, arc, { width, height, sideHeight, sightHeight }));
  const shaped = arched ? 'cutout' : 'mill';
  const raised = sign(tooling.raise) > 0;
  if (raised)
    stages.push({
      stage: 'raise',
      station: 'router-table',
      after: [shaped],
      entries: [
        exact('tongue', tooling.tongue, 'from.front', 'why.tongue', {
          groove: spec.groove.width,
          fit: profile.slidingFit,
          tongue: tooling.tongue,
        }),
        exact('depth', tooling.raise, 'from.back', 'why.raise-depth', {
          thickness,
          tongue: tooling.tongue,
          depth: tooling.raise,
        }),
        exact('band', profile.panelBand, 'from.panel-edge', 'why.band', { depth: spec.groove.depth }),
      ],
    });
  stages.push({ stage: 'finish', station: 'bench', after: [raised ? 'raise' : shaped], entries: [] });
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
): StageDraft {
  const hold = joint.panelHold;
  const radius = sum(arc.radius, hold);
  const pivot = sum(arc.pivot, hold);
  const chord = real(2 * Math.sqrt(Math.max(0, realOf(times(arc.rise, less(times(radius, 2), arc.rise))))));
  return {
    stage: 'cutout',
    station: 'band-saw',
    after: ['mill'],
    entries: [
      exact('width', size.width, 'from.edge', 'why.panel-width', {
        sightWidth: joint.sightWidth,
        hold,
        width: size.width,
      }),
      exact('height', size.height, 'from.panel-bottom', 'why.panel-height', {
        sightHeight: size.sightHeight,
        hold,
        rise: arc.rise,
        height: size.height,
      }),
      exact('sideHeight', size.sideHeight, 'from.panel-bottom', 'why.sideHeight', {
        sightHeight: size.sightHeight,
        hold,
        sideHeight: size.sideHeight,
      }),
      exact('radius', radius, 'from.pivot', 'why.panel-radius', { arch: arc.radius, hold, radius }),
      exact('rise', arc.rise, 'from.panel-flats', 'why.rise'),
      irrational('chord', chord, 'from.springings', 'why.panel-chord', { rise: arc.rise, radius }),
      irrational('flat', real((realOf(size.width) - chord) / 2), 'from.edge', 'why.panel-flat', {
        width: size.width,
        chord,
      }),
      exact('pivot', pivot, 'from.panel-flats', 'why.panel-pivot', { radius, rise: arc.rise, pivot }),
      exact('centre', half(size.width), 'from.edge', 'why.panel-centre', { width: size.width }),
    ],
  };
}
