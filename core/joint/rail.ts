import { half, larger, less, type Length, sum, times, ZERO } from '../length/length.ts';
import { irrationalArc } from './arc-length.ts';
import type { Joint } from './derive.ts';
import { bead, groove, mill, mitre } from './frame-stages.ts';
import { type Entry, exact, irrational, type PartDraft, type StageDraft } from './stage-draft.ts';
import type { Tooling } from './tooling.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';

/** The rails from the bottom up: bottom, mids, top. */
export function rails(joint: Joint, tooling: Tooling, profile: ShopProfile): PartDraft[] {
  const { bottomRail, topRail, arch } = joint.spec;
  return [
    rail('rail-bottom', bottomRail.width, joint, tooling, profile),
    rail(
      'rail-top',
      joint.topRailEnds,
      joint,
      tooling,
      profile,
      arch === null ? {} : { crown: topRail.width, rise: arch.rise },
    ),
    ...joint.midRails.map(({ width }, k) => rail(`rail-mid-${k + 1}`, width, joint, tooling, profile)),
  ];
}

function rail(
  part: string,
  width: Length,
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
  top: { crown?: Length; rise?: Length } = {},
): PartDraft {
  const { spec } = joint;
  const mid = part.startsWith('rail-mid');
  const arched = top.rise !== undefined;
  const beaded = spec.bead.compare(0) > 0;
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
  if (arched) stages.push(...archStages(joint, tooling));
  const shaped = arched ? 'smooth' : 'mill';
  if (beaded) stages.push(bead(joint, shaped));
  const beforeGroove = beaded ? 'bead' : shaped;
  stages.push(arched ? slot(joint, beforeGroove) : groove(joint, tooling, beforeGroove));
  stages.push(...tenonStages(joint, width, mid, arched, profile));
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

function tenonStages(
  joint: Joint,
  width: Length,
  mid: boolean,
  arched: boolean,
  profile: ShopProfile,
): StageDraft[] {
  const { spec } = joint;
  const { tenon, bead: b, groove: g } = spec;
  const beaded = b.compare(0) > 0;
  const sightEdge = sum(tenon.length, b);
  const wall = exact('height', joint.wall, 'from.table', 'why.wall', {
    thickness: spec.thickness,
    groove: g.width,
    wall: joint.wall,
  });
  const stages: StageDraft[] = [
    {
      stage: 'shoulder',
      station: 'table-saw',
      after: [arched ? 'slot' : 'groove'],
      entries: [exact('stop', tenon.length, 'from.rail-end', 'why.shoulder-stop'), wall],
    },
    {
      stage: 'cheek',
      station: 'table-saw',
      after: ['shoulder'],
      entries: [
        wall,
        exact('thickness', g.width, 'from.between', 'why.tenon-thickness', {
          thickness: spec.thickness,
          wall: joint.wall,
          groove: g.width,
          fit: profile.slidingFit,
        }),
      ],
    },
  ];
  if (beaded)
    stages.push(
      mitre(
        'mitre',
        'shoulder',
        { value: sightEdge, reason: 'why.mitre-rail', figures: { tenon: tenon.length, bead: b } },
        tenon.length,
        b,
        null,
      ),
    );
  const haunch = larger(less(g.depth, b), ZERO);
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
        exact('length', haunch, 'from.shoulder', 'why.haunch-length', { depth: g.depth, bead: b, haunch }),
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
