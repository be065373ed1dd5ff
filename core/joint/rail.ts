import { half, larger, type Length, less, sign, sum, times, ZERO } from '../length/length.ts';
import { irrationalArc } from './arc-length.ts';
import type { Joint } from './derive.ts';
import { bead, groove, mill, mitre } from './frame-stages.ts';
import { type Entry, exact, irrational, type PartDraft, type StageDraft } from './stage-draft.ts';
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
  readonly shoulder: StageDraft;
  readonly cheek: StageDraft;
  readonly mitre: readonly StageDraft[];
}

function sharedStages(joint: Joint, tooling: Tooling, profile: ShopProfile): SharedStages {
  const { tenon, bead: b } = joint.spec;
  const beaded = sign(b) > 0;
  return {
    sticking: beaded
      ? [bead(joint, 'mill'), groove(joint, tooling, 'bead')]
      : [groove(joint, tooling, 'mill')],
    shoulder: shoulder(joint, 'groove'),
    cheek: cheek(joint, profile),
    mitre: beaded
      ? [
          mitre(
            'mitre',
            'shoulder',
            {
              value: sum(tenon.length, b),
              reason: 'why.mitre-rail',
              figures: { tenon: tenon.length, bead: b },
            },
            tenon.length,
            b,
            null,
          ),
        ]
      : [],
  };
}

function rail(
  part: string,
  width: Length,
  joint: Joint,
  tooling: Tooling,
  shared: SharedStages,
  top: { crown?: Length; rise?: Length } = {},
): PartDraft {
  const { spec } = joint;
  const mid = part.startsWith('rail-mid');
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
      stage: 'arch',
      station: 'band-saw',
      after: ['mill'],
      entries: [
        exact('chord', arc.chord, 'from.springings', 'why.chord', {
          sightWidth: joint.sightWidth,
          flat: arc.flat,
          chord: arc.chord,
        }),
        exact('rise', arc.rise, 'from.flats', 'why.rise'),
        exact('radius', arc.radius, 'from.pivot', 'why.radius', {
          chord: arc.chord,
          rise: arc.rise,
          radius: arc.radius,
        }),
        exact('pivot', arc.pivot, 'from.flats', 'why.pivot', {
          radius: arc.radius,
          rise: arc.rise,
          pivot: arc.pivot,
        }),
        exact('springing', springing, 'from.rail-end', 'why.springing', {
          tenon: spec.tenon.length,
          bead: spec.bead,
          flat: arc.flat,
          springing,
        }),
        exact('centre', half(joint.railLength), 'from.rail-end', 'why.centre', { length: joint.railLength }),
        irrational('arcLength', irrationalArc(arc), 'from.springings', 'why.arcLength', {
          radius: arc.radius,
          chord: arc.chord,
        }),
      ],
    },
    {
      stage: 'smooth',
      station: 'spindle-sander',
      after: ['arch'],
      entries: [
        exact('radius', arc.radius, 'from.pivot', 'why.radius', {
          chord: arc.chord,
          rise: arc.rise,
          radius: arc.radius,
        }),
        ...(tooling.drum === null
          ? []
          : [exact('drum', tooling.drum, 'from.none', 'why.drum', { radius: arc.radius })]),
      ],
    },
  ];
}

/** The groove of an arched rail: slotted front down only, the cutter bearing on the back wall. */
function slot(joint: Joint, after: string): StageDraft {
  const { groove: cut, thickness } = joint.spec;
  return {
    stage: 'slot',
    station: 'router-table',
    after: [after],
    entries: [
      exact('width', cut.width, 'from.between', 'why.groove-width'),
      exact('depth', cut.depth, 'from.sight-edge', 'why.groove-depth'),
      exact('cutterHeight', joint.wall, 'from.table', 'why.wall', {
        thickness,
        groove: cut.width,
        wall: joint.wall,
      }),
    ],
  };
}

function wallHeight({ spec, wall }: Joint): Entry {
  return exact('height', wall, 'from.table', 'why.wall', {
    thickness: spec.thickness,
    groove: spec.groove.width,
    wall,
  });
}

/** The shoulders of both faces, never of the edges. */
function shoulder(joint: Joint, after: string): StageDraft {
  return {
    stage: 'shoulder',
    station: 'table-saw',
    after: [after],
    entries: [
      exact('stop', joint.spec.tenon.length, 'from.rail-end', 'why.shoulder-stop'),
      wallHeight(joint),
    ],
  };
}

/** The tenon's cheeks: a wall off each face, so that what stays is as thick as the groove is wide. */
function cheek(joint: Joint, profile: ShopProfile): StageDraft {
  const { spec, wall } = joint;
  return {
    stage: 'cheek',
    station: 'table-saw',
    after: ['shoulder'],
    entries: [
      wallHeight(joint),
      exact('thickness', spec.groove.width, 'from.between', 'why.tenon-thickness', {
        thickness: spec.thickness,
        wall,
        groove: spec.groove.width,
        fit: profile.slidingFit,
      }),
    ],
  };
}

function tenonStages(joint: Joint, width: Length, mid: boolean, arched: boolean): StageDraft[] {
  const { tenon, bead: b, groove: g } = joint.spec;
  const beaded = sign(b) > 0;
  const stages: StageDraft[] = [];
  const haunch = larger(less(g.depth, b, tenon.haunchClearance), ZERO);
  stages.push({
    stage: 'tenon',
    station: 'table-saw',
    after: arched && beaded ? ['cheek', 'mitre'] : ['cheek'],
    entries: tenonEntries(joint, width, mid, haunch),
  });
  if (!mid)
    stages.push({
      stage: 'haunch',
      station: 'bench',
      after: ['tenon'],
      entries: [
        exact('length', haunch, 'from.shoulder', 'why.haunch-length', {
          depth: g.depth,
          bead: b,
          clearance: tenon.haunchClearance,
        }),
        exact('height', tenon.outerSetback, 'from.outer-edge', 'why.haunch-height'),
      ],
    });
  if (beaded) stages.push({ stage: 'clean', station: 'bench', after: ['mitre', 'tenon'], entries: [] });
  return stages;
}

function tenonEntries(joint: Joint, width: Length, mid: boolean, haunch: Length): Entry[] {
  const { tenon, bead: b } = joint.spec;
  const inner = sum(b, tenon.innerSetback);
  const innerEntries = [
    exact('innerHeight', inner, 'from.inner-edge', 'why.innerHeight', {
      bead: b,
      inner: tenon.innerSetback,
      innerHeight: inner,
    }),
    exact('innerStop', tenon.length, 'from.rail-end', 'why.innerStop'),
  ];
  if (mid) {
    const wide = less(width, times(inner, 2));
    return [
      exact('width', wide, 'from.between', 'why.mid-tenon-width', {
        rail: width,
        bead: b,
        inner: tenon.innerSetback,
        width: wide,
      }),
      ...innerEntries,
    ];
  }
  const wide = less(width, inner, tenon.outerSetback);
  return [
    exact('width', wide, 'from.between', 'why.tenon-width', {
      rail: width,
      bead: b,
      outer: tenon.outerSetback,
      inner: tenon.innerSetback,
      width: wide,
    }),
    exact('outerHeight', tenon.outerSetback, 'from.outer-edge', 'why.outerHeight'),
    exact('outerStop', less(tenon.length, haunch), 'from.rail-end', 'why.outerStop', {
      tenon: tenon.length,
      haunch,
    }),
    ...innerEntries,
  ];
}
