import { half, larger, type Length, less, sign, sum, times, ZERO } from '../length/length.ts';
import { irrationalArc } from './arc-length.ts';
import { type PartName, readPart } from '../plan/part-name.ts';
import type { StageId } from '../stages/stage-id.ts';
import type { Joint } from './derive.ts';
import { bead, groove, mill, mitreOfRail, slot } from './frame-stages.ts';
import {
  type DraftOf,
  exact,
  irrational,
  type PartDraft,
  type StageDraft,
  usualStation,
} from './stage-draft.ts';
import type { Tooling } from './tooling.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';

/** The rails from the bottom up: bottom, mids, top. */
export function rails(joint: Joint, tooling: Tooling, profile: ShopProfile): PartDraft[] {
  const { bottomRail, topRail, arch } = joint.spec;
  const shared = sharedStages(joint, tooling, profile);
  return [
    rail('rail-bottom', bottomRail.width, joint, tooling, shared),
    rail(
      'rail-top',
      joint.topRailEnds,
      joint,
      tooling,
      shared,
      arch === null ? {} : { crown: topRail.width, rise: arch.rise },
    ),
    ...joint.midRails.map(({ width }, k) => rail(`rail-mid-${k + 1}`, width, joint, tooling, shared)),
  ];
}

/** What every straight rail of a door is given alike; an arched one shares its cheeks and mitres. */
interface SharedStages {
  readonly sticking: readonly StageDraft[];
  readonly shoulder: DraftOf<'shoulder'>;
  readonly cheek: DraftOf<'cheek'>;
  readonly mitre: readonly DraftOf<'mitre'>[];
}

function sharedStages(joint: Joint, tooling: Tooling, profile: ShopProfile): SharedStages {
  const { tenon, bead: b } = joint.spec;
  const beaded = sign(b) > 0;
  const grooved = groove(joint, tooling, profile, beaded ? 'bead' : 'mill');
  return {
    sticking: beaded ? [bead(joint, 'mill'), grooved] : [grooved],
    shoulder: shoulder(joint, grooved.stage),
    cheek: cheek(joint, profile),
    mitre: beaded
      ? [
          mitreOfRail(
            {
              value: sum(tenon.length, b),
              reason: 'why.mitre-rail',
              figures: { tenon: tenon.length, bead: b },
            },
            b,
          ),
        ]
      : [],
  };
}

function rail(
  part: PartName,
  width: Length,
  joint: Joint,
  tooling: Tooling,
  shared: SharedStages,
  top: { crown?: Length; rise?: Length } = {},
): PartDraft {
  const { spec } = joint;
  const mid = readPart({ part }).at === 'mid';
  const arched = top.rise !== undefined;
  const beaded = sign(spec.bead) > 0;
  const stages: StageDraft[] = [
    mill(
      joint.railLength,
      width,
      spec.thickness,
      { length: 'why.rail-length', width: arched ? 'why.top-rail-width' : 'why.member-width' },
      {
        length: {
          sightWidth: joint.sightWidth,
          bead: spec.bead,
          tenon: spec.tenon.length,
          length: joint.railLength,
        },
        width: arched && top.crown && top.rise ? { crown: top.crown, rise: top.rise, width } : { width },
      },
    ),
  ];
  if (arched) {
    stages.push(...archStages(joint, tooling));
    if (beaded) stages.push(bead(joint, 'smooth'));
    stages.push(slot(joint, beaded ? 'bead' : 'smooth'), shoulder(joint, 'slot'));
  } else stages.push(...shared.sticking, shared.shoulder);
  stages.push(shared.cheek, ...shared.mitre, ...tenonStages(joint, width, mid, arched));
  return { part, length: joint.railLength, width, thickness: spec.thickness, stages };
}

/** Bandsawing the arch and sanding it to its radius. */
function archStages(joint: Joint, tooling: Tooling): StageDraft[] {
  const { arc, spec } = joint;
  if (arc === null) return [];
  const springing = sum(spec.tenon.length, spec.bead, arc.flat);
  return [
    {
      kind: 'arch',
      stage: 'arch',
      station: usualStation('arch'),
      after: ['mill'],
      entries: {
        chord: exact(arc.chord, 'from.springings', 'why.chord', {
          sightWidth: joint.sightWidth,
          flat: arc.flat,
          chord: arc.chord,
        }),
        rise: exact(arc.rise, 'from.flats', 'why.rise'),
        radius: exact(arc.radius, 'from.pivot', 'why.radius', {
          chord: arc.chord,
          rise: arc.rise,
          radius: arc.radius,
        }),
        pivot: exact(arc.pivot, 'from.flats', 'why.pivot', {
          radius: arc.radius,
          rise: arc.rise,
          pivot: arc.pivot,
        }),
        springing: exact(springing, 'from.rail-end', 'why.springing', {
          tenon: spec.tenon.length,
          bead: spec.bead,
          flat: arc.flat,
          springing,
        }),
        centre: exact(half(joint.railLength), 'from.rail-end', 'why.centre', { length: joint.railLength }),
        arcLength: irrational(irrationalArc(arc), 'from.springings', 'why.arcLength', {
          radius: arc.radius,
          chord: arc.chord,
        }),
      },
    },
    {
      kind: 'smooth',
      stage: 'smooth',
      station: usualStation('smooth'),
      after: ['arch'],
      entries: {
        radius: exact(arc.radius, 'from.pivot', 'why.radius', {
          chord: arc.chord,
          rise: arc.rise,
          radius: arc.radius,
        }),
        drum:
          tooling.drum === null
            ? undefined
            : exact(tooling.drum, 'from.none', 'why.drum', { radius: arc.radius }),
      },
    },
  ];
}

function cheekHeight({ spec, cheek: off }: Joint) {
  return exact(off, 'from.table', 'why.wall', {
    thickness: spec.thickness,
    groove: spec.stileGroove,
    wall: off,
  });
}

/** The shoulders of both faces, never of the edges. */
function shoulder(joint: Joint, after: StageId): DraftOf<'shoulder'> {
  return {
    kind: 'shoulder',
    stage: 'shoulder',
    station: usualStation('shoulder'),
    after: [after],
    entries: {
      stop: exact(joint.spec.tenon.length, 'from.rail-end', 'why.shoulder-stop'),
      height: cheekHeight(joint),
    },
  };
}

/** The tenon's cheeks: as much off each face as leaves it as thick as its stiles' grooves are wide. */
function cheek(joint: Joint, profile: ShopProfile): DraftOf<'cheek'> {
  const { spec, cheek: off } = joint;
  return {
    kind: 'cheek',
    stage: 'cheek',
    station: usualStation('cheek'),
    after: ['shoulder'],
    entries: {
      height: cheekHeight(joint),
      thickness: exact(spec.stileGroove, 'from.between', 'why.tenon-thickness', {
        thickness: spec.thickness,
        wall: off,
        groove: spec.stileGroove,
        fit: profile.slidingFit,
      }),
      // By the plan it always fits.
      pareTo: undefined,
    },
  };
}

function tenonStages(joint: Joint, width: Length, mid: boolean, arched: boolean): StageDraft[] {
  const { tenon, bead: b, groove: g } = joint.spec;
  const beaded = sign(b) > 0;
  const stages: StageDraft[] = [];
  const haunch = larger(less(g.depth, b, tenon.haunchClearance), ZERO);
  stages.push({
    kind: 'tenon',
    stage: 'tenon',
    station: usualStation('tenon'),
    after: arched && beaded ? ['cheek', 'mitre'] : ['cheek'],
    entries: tenonEntries(joint, width, mid, haunch),
  });
  if (!mid)
    stages.push({
      kind: 'haunch',
      stage: 'haunch',
      station: usualStation('haunch'),
      after: ['tenon'],
      entries: {
        length: exact(haunch, 'from.shoulder', 'why.haunch-length', {
          depth: g.depth,
          bead: b,
          clearance: tenon.haunchClearance,
        }),
        height: exact(tenon.outerSetback, 'from.outer-edge', 'why.haunch-height'),
        // By the plan it always fits.
        pareTo: undefined,
      },
    });
  if (beaded)
    stages.push({
      kind: 'clean',
      stage: 'clean',
      station: usualStation('clean'),
      after: ['mitre', 'tenon'],
      entries: {},
    });
  return stages;
}

function tenonEntries(
  joint: Joint,
  width: Length,
  mid: boolean,
  haunch: Length,
): DraftOf<'tenon'>['entries'] {
  const { tenon, bead: b } = joint.spec;
  const inner = sum(b, tenon.innerSetback);
  const wide = mid ? less(width, times(inner, 2)) : less(width, inner, tenon.outerSetback);
  const figures = { rail: width, bead: b, inner: tenon.innerSetback, width: wide };
  return {
    width: mid
      ? exact(wide, 'from.between', 'why.mid-tenon-width', figures)
      : exact(wide, 'from.between', 'why.tenon-width', { ...figures, outer: tenon.outerSetback }),
    outerHeight: mid ? undefined : exact(tenon.outerSetback, 'from.outer-edge', 'why.outerHeight'),
    outerStop: mid
      ? undefined
      : exact(less(tenon.length, haunch), 'from.rail-end', 'why.outerStop', { tenon: tenon.length, haunch }),
    innerHeight: exact(inner, 'from.inner-edge', 'why.innerHeight', {
      bead: b,
      inner: tenon.innerSetback,
      innerHeight: inner,
    }),
    innerStop: exact(tenon.length, 'from.rail-end', 'why.innerStop'),
  };
}
