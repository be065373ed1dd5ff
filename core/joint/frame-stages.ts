import { type Length, less } from '../length/length.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';
import type { StageId } from '../stages/stage-id.ts';
import { type DatumKey, type DraftOf, exact, plain, usualStation } from './stage-draft.ts';
import type { Tooling } from './tooling.ts';

/** Milling to size: the first stage of every part. */
export function mill(
  length: Length,
  width: Length,
  thickness: Length,
  reasons: {
    length: 'why.stile-length' | 'why.rail-length' | 'why.panel-height' | 'why.as-measured';
    width: 'why.member-width' | 'why.top-rail-width' | 'why.panel-width' | 'why.as-measured';
  },
  figures: { length: Record<string, Length>; width: Record<string, Length> },
): DraftOf<'mill'> {
  return {
    kind: 'mill',
    stage: 'mill',
    station: usualStation('mill'),
    after: [],
    entries: {
      length: exact(length, 'from.end', reasons.length, figures.length),
      width: exact(width, 'from.edge', reasons.width, figures.width),
      thickness: exact(thickness, 'from.face', 'why.thickness'),
    },
  };
}

/** Sticking the bead, front down on the router table. */
export function bead(joint: Joint, after: StageId): DraftOf<'bead'> {
  const { wall, fillet, spec } = joint;
  const figures = { wall, bead: spec.bead, thickness: spec.thickness, groove: spec.groove.width };
  return {
    kind: 'bead',
    stage: 'bead',
    station: usualStation('bead'),
    after: [after],
    entries: {
      bead: exact(spec.bead, 'from.sight-edge', 'why.bead'),
      fillet: exact(fillet, 'from.front', 'why.fillet', figures),
      cutterHeight: exact(wall, 'from.table', 'why.cutterHeight', figures),
    },
  };
}

/** The groove of a straight member in the shop's way: ploughed on the saw, or slotted as an arched rail's is. */
export function groove(
  joint: Joint,
  tooling: Tooling,
  { ways }: Pick<ShopProfile, 'ways'>,
  after: StageId,
): DraftOf<'groove'> | DraftOf<'slot'> {
  return ways.groove === 'router' ? slot(joint, after) : ploughed(joint, tooling, after);
}

/** Ploughing on the table saw: two passes, one with each face to the fence, so that it is centred. */
function ploughed(joint: Joint, tooling: Tooling, after: StageId): DraftOf<'groove'> {
  const { groove: cut } = joint.spec;
  return {
    kind: 'groove',
    stage: 'groove',
    station: usualStation('groove'),
    after: [after],
    entries: {
      width: exact(cut.width, 'from.between', 'why.groove-width'),
      depth: exact(cut.depth, 'from.sight-edge', 'why.groove-depth'),
      fence: exact(joint.wall, 'from.face-fence', 'why.wall', {
        thickness: joint.spec.thickness,
        groove: cut.width,
        wall: joint.wall,
      }),
      blade:
        tooling.dado === null
          ? undefined
          : exact(
              tooling.dado,
              'from.none',
              tooling.dado.equals(cut.width) ? 'why.dado-as-wide' : 'why.dado',
              { groove: cut.width },
            ),
    },
  };
}

/** The groove slotted on the router table, front down only, the cutter bearing on the back wall. */
export function slot(joint: Joint, after: StageId): DraftOf<'slot'> {
  const { groove: cut, thickness } = joint.spec;
  return {
    kind: 'slot',
    stage: 'slot',
    station: usualStation('slot'),
    after: [after],
    entries: {
      width: exact(cut.width, 'from.between', 'why.groove-width'),
      depth: exact(cut.depth, 'from.sight-edge', 'why.groove-depth'),
      cutterHeight: exact(joint.wall, 'from.table', 'why.wall', {
        thickness,
        groove: cut.width,
        wall: joint.wall,
      }),
    },
  };
}

/** Where a mitre's sight edge is, and why. */
export interface SightEdge {
  readonly value: Length;
  readonly reason:
    'why.mitre-bottom' | 'why.mitre-top' | 'why.mitre-mid-lower' | 'why.mitre-mid-upper' | 'why.mitre-rail';
  readonly figures: Readonly<Record<string, Length>>;
}

/** What is set for a mitre, its sight edge measured from this datum; its shoulder line is one bead nearer the end. */
function mitred({ value, reason, figures }: SightEdge, bead: Length, from: DatumKey) {
  const shoulderLine = less(value, bead);
  return {
    sightEdge: exact(value, from, reason, { ...figures, sightEdge: value }),
    shoulderLine: exact(shoulderLine, from, 'why.shoulderLine', { sightEdge: value, bead, shoulderLine }),
    height: exact(bead, 'from.table', 'why.mitre-height'),
    tilt: plain(45, 'from.square', 'why.tilt'),
  };
}

/** A mitre of a stile and its shoulder line, from the end that is against the stop. */
export function mitreOfEnd(
  stage: StageId<'mitre-end'>,
  end: 'top' | 'bottom',
  sightEdge: SightEdge,
  bead: Length,
  after: StageId,
): DraftOf<'mitre-end'> {
  return {
    kind: 'mitre-end',
    stage,
    station: usualStation('mitre-end'),
    after: [after],
    entries: {
      fromEnd: plain(end, 'from.chosen', 'why.fromEnd'),
      ...mitred(sightEdge, bead, end === 'top' ? 'from.top-end' : 'from.bottom-end'),
    },
  };
}

/** The mitres of a rail and their shoulder lines, from each of its ends. */
export function mitreOfRail(sightEdge: SightEdge, bead: Length): DraftOf<'mitre'> {
  return {
    kind: 'mitre',
    stage: 'mitre',
    station: usualStation('mitre'),
    after: ['shoulder'],
    entries: mitred(sightEdge, bead, 'from.rail-end'),
  };
}
