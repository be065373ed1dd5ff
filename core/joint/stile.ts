import { half, type Length, less, over, sign, sum, times } from '../length/length.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';
import { bead, groove, mill, mitre } from './frame-stages.ts';
import {
  type Entry,
  exact,
  irrational,
  type PartDraft,
  plain,
  type PlaceDraft,
  type StageDraft,
} from './stage-draft.ts';
import { CLEAR, type Tooling } from './tooling.ts';

/** Both stiles of a door: mirror images, so only the faces that lie up for the strip differ. */
export function stiles(
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
): readonly [PartDraft, PartDraft] {
  const shared = sharedStages(joint, tooling);
  return [stile('left', joint, tooling, profile, shared), stile('right', joint, tooling, profile, shared)];
}

function stile(
  side: 'left' | 'right',
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
  shared: readonly StageDraft[],
): PartDraft {
  const { spec } = joint;
  const width = widthOf(side, spec);
  const stages = [millStile(joint, width), ...shared];
  if (sign(spec.bead) > 0) {
    stages.push(strip(side, joint, tooling, profile, shared));
    const notches = shared.filter(({ stage }) => stage.startsWith('notch-')).map(({ stage }) => stage);
    stages.push({ stage: 'clean', station: 'bench', entries: [], after: ['strip', ...notches] });
  }
  return {
    part: `stile-${side}`,
    length: joint.stileLength,
    width,
    thickness: spec.thickness,
    stages,
  };
}

/** A stile's width; the right one's own where it was measured. */
function widthOf(side: 'left' | 'right', spec: Joint['spec']): Length {
  return side === 'right' ? (spec.rightStile ?? spec.stile.width) : spec.stile.width;
}

function millStile(joint: Joint, width: Length): StageDraft {
  return mill(
    joint.stileLength,
    width,
    joint.spec.thickness,
    { length: 'why.stile-length', width: 'why.member-width' },
    {
      length: { builtHeight: joint.builtHeight, horn: joint.spec.horn, length: joint.stileLength },
      width: { width },
    },
  );
}

function sharedStages(joint: Joint, tooling: Tooling): StageDraft[] {
  const { spec } = joint;
  const stages: StageDraft[] = [];
  const beaded = sign(spec.bead) > 0;
  if (beaded) stages.push(bead(joint, 'mill'));
  stages.push(groove(joint, tooling, beaded ? 'bead' : 'mill'));
  stages.push(mortise(joint, tooling));
  stages.push({
    stage: 'pare',
    station: 'bench',
    after: ['mortise'],
    entries: [exact('width', spec.groove.width, 'from.between', 'why.pare')],
  });
  if (beaded) stages.push(...mitres(joint));
  return stages;
}

/** Depths from the bead's edge and from the groove floor; where each mortise starts and stops. */
function mortise(joint: Joint, tooling: Tooling): StageDraft {
  const { spec } = joint;
  const depth = sum(spec.bead, spec.tenon.length, spec.mortise.clearance);
  const figures = {
    bead: spec.bead,
    tenon: spec.tenon.length,
    clearance: spec.mortise.clearance,
    depth,
    groove: spec.groove.depth,
  };
  const { chisel } = tooling;
  return {
    stage: 'mortise',
    station: 'mortiser',
    after: ['groove'],
    entries: [
      exact('depthFromEdge', depth, 'from.bead-edge', 'why.depthFromEdge', figures),
      exact(
        'depthFromGroove',
        less(depth, spec.groove.depth),
        'from.groove-floor',
        'why.depthFromGroove',
        figures,
      ),
      ...(chisel === null
        ? []
        : [
            exact('chisel', chisel, 'from.none', 'why.chisel', { groove: spec.groove.width }),
            exact('fence', half(less(spec.thickness, chisel)), 'from.mortiser-fence', 'why.mortiser-fence', {
              thickness: spec.thickness,
              chisel,
            }),
          ]),
    ],
    places: mortisePlaces(joint, chisel),
  };
}

function mortisePlaces(joint: Joint, chisel: Length | null): PlaceDraft[] {
  const { horn, tenon, mortise: fit, bead: b, bottomRail } = joint.spec;
  const start = less(sum(horn, tenon.outerSetback), fit.endPlay);
  const stopAt = (rail: Length) => less(sum(horn, rail, fit.endPlay), b, tenon.innerSetback);
  const outer = (at: 'bottom' | 'top', rail: Length): PlaceDraft => {
    const figures = {
      horn,
      rail,
      bead: b,
      outer: tenon.outerSetback,
      inner: tenon.innerSetback,
      play: fit.endPlay,
    };
    const from = at === 'top' ? 'from.top-end' : 'from.bottom-end';
    const stop = stopAt(rail);
    return place(
      at,
      exact('start', start, from, 'why.mortise-start', figures),
      exact('stop', stop, from, 'why.mortise-stop', figures),
      start,
      stop,
      chisel,
    );
  };
  const mids = joint.midRails.map(({ width, centre }, k) => {
    const halfWidth = half(width);
    const inset = less(sum(b, tenon.innerSetback), fit.endPlay);
    const from = sum(horn, less(centre, halfWidth), inset);
    const to = less(sum(horn, centre, halfWidth), inset);
    const figures = { horn, centre, half: halfWidth, bead: b, inner: tenon.innerSetback, play: fit.endPlay };
    return place(
      `mid-${k + 1}`,
      exact('start', from, 'from.bottom-end', 'why.mortise-mid-start', figures),
      exact('stop', to, 'from.bottom-end', 'why.mortise-mid-stop', figures),
      from,
      to,
      chisel,
    );
  });
  return [outer('bottom', bottomRail.width), ...mids, outer('top', joint.topRailEnds)];
}

function place(
  at: string,
  start: Entry,
  stop: Entry,
  from: Length,
  to: Length,
  chisel: Length | null,
): PlaceDraft {
  const long = less(to, from);
  const entries = [
    start,
    stop,
    exact('length', long, 'from.mortise-start', 'why.mortise-length', {
      start: from,
      stop: to,
      length: long,
    }),
  ];
  if (chisel !== null)
    entries.push(
      plain('plunges', over(long, chisel).ceil().valueOf(), 'from.counted', 'why.plunges', {
        length: long,
        chisel,
      }),
    );
  return { at, entries };
}

function mitres(joint: Joint): StageDraft[] {
  const { horn, bead: b, bottomRail } = joint.spec;
  const cut = (
    stage: string,
    end: 'top' | 'bottom',
    value: Length,
    reason: Parameters<typeof mitre>[2]['reason'],
    figures: Record<string, Length>,
  ) => mitre(stage, 'groove', { value, reason, figures }, less(value, b), b, end);
  const stages = [
    cut('mitre-bottom', 'bottom', sum(horn, bottomRail.width), 'why.mitre-bottom', {
      horn,
      rail: bottomRail.width,
    }),
    cut('mitre-top', 'top', sum(horn, joint.topRailEnds), 'why.mitre-top', { horn, rail: joint.topRailEnds }),
  ];
  const mids = joint.midRails.map(({ width, centre }, k) => ({ k: k + 1, centre, half: half(width), width }));
  for (const { k, centre, half: h } of mids)
    stages.push(
      cut(
        `mitre-mid-${k}-lower`,
        'top',
        less(sum(horn, joint.builtHeight, h), centre),
        'why.mitre-mid-lower',
        { horn, builtHeight: joint.builtHeight, centre, half: h },
      ),
    );
  for (const { k, centre, half: h } of mids)
    stages.push(
      cut(`mitre-mid-${k}-upper`, 'bottom', sum(horn, centre, h), 'why.mitre-mid-upper', {
        horn,
        centre,
        half: h,
      }),
    );
  for (const { k, centre, half: h, width } of mids) {
    const from = sum(less(sum(horn, centre), h), b);
    const to = less(sum(horn, centre, h), b);
    const figures = { horn, centre, half: h, bead: b };
    stages.push({
      stage: `notch-mid-${k}`,
      station: 'table-saw',
      after: ['mortise', `mitre-mid-${k}-lower`, `mitre-mid-${k}-upper`],
      entries: [
        plain('fromEnd', 'bottom', 'from.chosen', 'why.fromEnd'),
        exact('from', from, 'from.bottom-end', 'why.notch-from', figures),
        exact('to', to, 'from.bottom-end', 'why.notch-to', figures),
        exact('length', less(width, times(b, 2)), 'from.between', 'why.notch-length', {
          rail: width,
          bead: b,
        }),
        exact('height', b, 'from.table', 'why.notch-height'),
      ],
    });
  }
  return stages;
}

/** The stopped rip that takes the bead away behind the rails, from each end to that end's shoulder line. */
function strip(
  side: 'left' | 'right',
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
  shared: readonly StageDraft[],
): StageDraft {
  const { horn, bead: b, bottomRail, thickness } = joint.spec;
  const width = widthOf(side, joint.spec);
  const fence = less(width, b);
  const rip = tooling.strip;
  const run = (at: 'bottom' | 'top', rail: Length): PlaceDraft => {
    const value = less(sum(horn, rail), b);
    const frontUp = (side === 'left') === (at === 'bottom');
    return {
      at,
      entries: [
        exact('run', value, at === 'top' ? 'from.top-end' : 'from.bottom-end', 'why.run', {
          horn,
          rail,
          bead: b,
          run: value,
        }),
        plain('faceUp', frontUp ? 'front' : 'back', 'from.chosen', 'why.faceUp'),
      ],
    };
  };
  return {
    stage: 'strip',
    station: profile.stripStation,
    after: ['mortise', ...shared.filter(({ stage }) => stage.startsWith('mitre-')).map(({ stage }) => stage)],
    entries: [
      exact('fence', fence, 'from.outer-edge', 'why.strip-fence', { width, bead: b, fence }),
      ...(rip === null
        ? []
        : [
            exact('bladeHeight', rip.bladeHeight, 'from.table', 'why.bladeHeight', {
              thickness,
              clear: CLEAR[profile.units],
            }),
            irrational('reach', rip.reach, 'from.arbor', 'why.reach', {
              bladeHeight: rip.bladeHeight,
              radius: half(profile.blade.diameter),
            }),
            irrational('lag', rip.lag, 'from.blade-front', 'why.lag', {
              bladeHeight: rip.bladeHeight,
              radius: half(profile.blade.diameter),
              thickness,
            }),
          ]),
    ],
    places: [run('bottom', bottomRail.width), run('top', joint.topRailEnds)],
  };
}
