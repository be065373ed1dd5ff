import { larger, type Length, less, over, sign, sum, times, ZERO } from '../length/length.ts';
import type { Limits } from '../length/limits.ts';
import type { PartName } from '../plan/part-name.ts';
import { readPart } from '../plan/part-name.ts';
import { parsePlace, type PlaceName } from '../plan/place-name.ts';
import type { StageKind } from '../stages/table.ts';
import type { BoundKey } from '../words/allow.ts';
import type { Joint } from './derive.ts';
import type { Allow } from './stage-draft.ts';
import type { Tooling } from './tooling.ts';

/** By how much settings may be off, by their names. */
export type Allowances = Readonly<Partial<Record<string, Allow>>>;

/** What the rules ask of a door and of the part that is cut. */
export interface AllowSource {
  readonly joint: Joint;
  readonly tooling: Tooling;
  readonly limits: Limits;
  readonly slidingFit: Length;
  readonly part: PartName;
  /** The part's own width, as milled. */
  readonly width: Length;
}

type Term = readonly [Length, BoundKey];

/** The smallest of several terms, never under zero, and which one it is: the first of those that are alike. */
function least([first, ...others]: readonly [Term, ...Term[]]): Term {
  const [room, by] = others.reduce((best, each) => (each[0].compare(best[0]) < 0 ? each : best), first);
  return [larger(room, ZERO), by];
}

function allow(under: readonly [Term, ...Term[]], above: readonly [Term, ...Term[]]): Allow {
  const [[lessRoom, lessBy], [moreRoom, moreBy]] = [least(under), least(above)];
  return { less: lessRoom, more: moreRoom, lessBy, moreBy };
}

/** No room on either side: to the line. */
const toTheLine = (by: BoundKey): Allow => ({ less: ZERO, more: ZERO, lessBy: by, moreBy: by });

/** By how much the settings of a stage of this kind may be off, all others exact: joint.md's table of `allow`. */
export function allowancesOf(kind: StageKind, source: AllowSource): Allowances {
  switch (kind) {
    case 'mortise':
      return { depthFromEdge: mortiseDepth(source) };
    case 'groove':
    case 'slot':
      return { depth: grooveDepth(source) };
    case 'tenon':
      return tenonHeights(source);
    case 'haunch':
      return { length: haunchLength(source) };
    case 'shoulder':
      return { stop: toTheLine('bound.shoulder'), height: faceHeight(source) };
    case 'cheek':
      return { height: faceHeight(source) };
    case 'mitre':
    case 'mitre-end':
      return { sightEdge: toTheLine('bound.mitre') };
    case 'notch':
      return { from: toTheLine('bound.shoulder'), to: toTheLine('bound.shoulder') };
    case 'strip':
      return { fence: toTheLine('bound.land') };
    case 'mill':
      return readPart(source).kind === 'panel' ? { length: panelSize(source), width: panelSize(source) } : {};
    case 'raise':
      return { tongue: tongue(source) };
    default:
      return {};
  }
}

/** The same for what is set at one of a stage's places. */
export function allowancesAt(kind: StageKind, at: PlaceName, source: AllowSource): Allowances {
  if (kind === 'mortise') return mortisePlace(at, source);
  return kind === 'strip' ? { run: toTheLine('bound.shoulder') } : {};
}

function mortiseDepth({ joint, limits, width }: AllowSource): Allow {
  const { bead, tenon, mortise } = joint.spec;
  const behind = less(width, bead, tenon.length, mortise.clearance, joint.trimEachSide, limits.eighth);
  return allow([[mortise.clearance, 'bound.mortise-floor']], [[behind, 'bound.behind-mortise']]);
}

/** How much of a tenon’s inner edge the groove of its rail takes, beyond what is cut off there. */
function eaten({ spec }: Joint): Length {
  return larger(less(spec.groove.depth, spec.bead, spec.tenon.innerSetback), ZERO);
}

/** Where the tenon’s inner edge is one that the groove has eaten, its place in the mortise is so much wider. */
function mortisePlace(at: PlaceName, { joint, limits }: AllowSource): Allowances {
  const { tenon, mortise } = joint.spec;
  const play = mortise.endPlay;
  const innerPlay: Term = [sum(play, eaten(joint)), 'bound.mortise-end'];
  const past: Term = [less(tenon.innerSetback, play), 'bound.mortise-shows'];
  const cover = less(tenon.outerSetback, joint.trimEachEnd, play, limits.eighth);
  return {
    start:
      parsePlace(at)?.at === 'mid'
        ? allow([past], [innerPlay])
        : allow([[cover, 'bound.mortise-cover']], [[play, 'bound.mortise-end']]),
    stop: allow([innerPlay], [past]),
  };
}

function haunchOf({ spec }: Joint): Length {
  return larger(less(spec.groove.depth, spec.bead, spec.tenon.haunchClearance), ZERO);
}

function grooveDepth(source: AllowSource): Allow {
  const { joint } = source;
  const { groove, bead, panel } = joint.spec;
  const part = readPart(source);
  const haunch = haunchOf(joint);
  const panelRoom: Term = [panel.clearance, 'bound.panel-floor'];
  const haunchRoom: Term = [less(groove.depth, bead, haunch), 'bound.haunch'];
  const under: [Term, ...Term[]] =
    part.kind === 'stile' && sign(haunch) > 0 ? [panelRoom, haunchRoom] : [panelRoom];
  // The deeper the groove, the farther the panel can slide into it, and the less holds it at the other side.
  const pushed: Term = [less(joint.panelHold, panel.clearance), 'bound.panel-pushed'];
  return allow(under, [[source.limits.sixteenth, 'bound.deep-enough'], ...deeper(source), pushed]);
}

function deeper({ joint, tooling, limits, width, part }: AllowSource): Term[] {
  const { groove, bead, tenon, topRail } = joint.spec;
  const depth = groove.depth;
  const chisel = tooling.chisel ?? ZERO;
  const read = readPart({ part });
  if (read.kind === 'stile')
    return [
      [less(width, depth, joint.trimEachSide, limits.threeEighths), 'bound.behind-groove'],
      [less(sum(bead, tenon.length), depth), 'bound.mortise-groove'],
    ];
  if (read.at === 'mid')
    return [
      [over(less(width, times(depth, 2), limits.threeEighths), 2), 'bound.mid-groove'],
      [less(over(less(width, chisel), 2), depth), 'bound.tenon-chisel'],
    ];
  const narrowest = read.at === 'top' ? topRail.width : width;
  return [
    [less(narrowest, depth, joint.trimEachEnd, limits.threeEighths), 'bound.behind-groove'],
    [less(width, tenon.outerSetback, depth, chisel), 'bound.tenon-chisel'],
  ];
}

/** Edges as they are sawn: what the groove takes of the inner one is not counted on. */
function tenonHeights({ joint, limits, part }: AllowSource): Allowances {
  const { mortise } = joint.spec;
  const narrower: [Term] = [[limits.thirtySecond, 'bound.tenon-width']];
  return {
    ...(readPart({ part }).at === 'mid'
      ? {}
      : { outerHeight: allow([[mortise.endPlay, 'bound.mortise-end']], narrower) }),
    innerHeight: allow([[mortise.endPlay, 'bound.mortise-end']], narrower),
  };
}

function haunchLength({ joint }: AllowSource): Allow {
  const { groove, bead } = joint.spec;
  const haunch = haunchOf(joint);
  const room = less(larger(less(groove.depth, bead), ZERO), haunch);
  return allow([[haunch, 'bound.haunch-gone']], [[room, 'bound.haunch']]);
}

/** The faces of a tenon: never lower, or it does not go in; higher by no more than a push by hand takes up. */
function faceHeight({ limits }: AllowSource): Allow {
  return allow([[ZERO, 'bound.tenon-tight']], [[limits.hair, 'bound.tenon-loose']]);
}

function panelSize({ joint, limits }: AllowSource): Allow {
  const { panelHold: hold, spec } = joint;
  const clearance = spec.panel.clearance;
  return allow(
    [
      [times(less(hold, limits.eighth), 2), 'bound.panel-hold'],
      [less(hold, clearance), 'bound.panel-pushed'],
    ],
    [[times(clearance, 2), 'bound.panel-floor']],
  );
}

function tongue({ joint, slidingFit }: AllowSource): Allow {
  return allow(
    [[over(joint.spec.groove.width, 4), 'bound.tongue-thin']],
    [[slidingFit, 'bound.tongue-tight']],
  );
}
