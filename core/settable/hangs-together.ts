import { half, larger, length, type Length, less, smaller, sum, times, ZERO } from '../length/length.ts';
import { readPrinted } from '../length/read-printed.ts';
import type { Units } from '../length/units.ts';
import { readPart } from '../plan/part-name.ts';
import type { PlaceName } from '../plan/place-name.ts';
import { partsOf } from '../plan/parts-of.ts';
import type { PlanDoor, PlanPart } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { factsOf, type StageKind } from '../stages/table.ts';
import { exactly, lengthOf } from './numbers.ts';
import type { Step } from './step.ts';
import { settableLength, settableSize, toMultiple } from './to-step.ts';

/** From where to where a tenon lies along a stile, from the end from which its mortise is measured. */
export interface Along {
  readonly from: Length;
  readonly to: Length;
}

/** A part's size as it is shown. */
export interface ShownSize {
  readonly length: Length;
  readonly width: Length;
  readonly thickness: Length;
}

/** What more than one number of a door hangs on: as it is shown, where it does not say that it is exact. */
export interface Together {
  readonly step: Step;
  /** Exact: the cutter's own. */
  readonly bead: Length;
  /** From shoulder to shoulder of every rail. */
  readonly shoulders: Length;
  /** How long the tenons are: where the shoulder's stop stands. */
  readonly stop: Length;
  readonly haunch: Length;
  /** Of the panels' edges. */
  readonly tongue: Length;
  /** Radius of the groove's floor over an arch; null where there is none. */
  readonly archFloor: Length | null;
  readonly size: (part: PlanPart) => ShownSize;
  /** How a rail's tenons come out. */
  readonly tenonFaces: (rail: PlanPart) => TenonFaces;
  /** Where the tenon of this place's rail lies, cut as it is shown. */
  readonly tenon: (at: PlaceName, mortise: Along) => Along;
}

/** A length as a setting of this kind of stage is set. */
export function asSet(kind: StageKind, name: string, value: Length, step: Step): Length {
  return settableLength(value, factsOf(kind).settings[name] ?? {}, step);
}

/** A tenon through its thickness. */
export interface TenonFaces {
  /** What is taken off each face. */
  readonly height: Length;
  readonly thickness: Length;
  /** How thick it is planed where it would not enter its mortises; null where it does. */
  readonly plane: Length | null;
  /** How thick its haunch is pared where the groove is narrower; null where it is not. */
  readonly haunch: Length | null;
}

/** What hangs together in a door, at a step. Throws where an outer part is missing: a broken plan. */
export function hangsTogether(door: PlanDoor, step: Step): Together {
  const { units } = step;
  const { stiles, rails, panels } = partsOf(door);
  const read = (value: string) => lengthOf(value, units) ?? readPrinted(value, units);
  const shown = (kind: StageKind, name: string, value: Length) => asSet(kind, name, value, step);
  const bead = exactly(stageOf(stiles.left, 'bead'), 'bead', units);
  const shoulders = settableSize(read(door.values.shoulderToShoulder), {}, step);
  const stop = settableSize(exactly(stageOf(rails.bottom, 'shoulder'), 'stop', units), {}, step);
  const sizes = new Map<PlanPart, ShownSize>();
  const size = (part: PlanPart): ShownSize => {
    const before = sizes.get(part);
    if (before !== undefined) return before;
    const now = sized(part);
    sizes.set(part, now);
    return now;
  };
  const sized = (part: PlanPart): ShownSize => {
    const exact = { length: read(part.length), width: read(part.width), thickness: read(part.thickness) };
    const { kind } = readPart(part);
    const inGroove = kind === 'panel' ? ({ rounds: 'down' } as const) : {};
    const length = kind === 'rail' ? sum(shoulders, times(stop, 2)) : exact.length;
    const width =
      kind === 'panel'
        ? less(sum(shoulders, exact.width), times(bead, 2), read(door.values.sightWidth))
        : exact.width;
    return {
      length: settableSize(length, inGroove, step),
      width: settableSize(width, inGroove, step),
      thickness: settableSize(exact.thickness, factsOf('mill').settings.thickness ?? {}, step),
    };
  };
  const horn = exactly(stageOf(door, 'trim'), 'horn', units);
  const railAt = (at: PlaceName): PlanPart | undefined =>
    at === 'bottom'
      ? rails.bottom
      : at === 'top'
        ? rails.top
        : rails.mids.find(({ part }) => part === `rail-${at}`);
  const tenon = (at: PlaceName, mortise: Along): Along => {
    const rail = railAt(at);
    const cut = rail === undefined ? undefined : stageOf(rail, 'tenon');
    if (rail === undefined || cut === undefined) return mortise;
    const height = (name: 'outerHeight' | 'innerHeight') => shown('tenon', name, exactly(cut, name, units));
    const wide = size(rail).width;
    if (at !== 'bottom' && at !== 'top') {
      const centre = half(sum(mortise.from, mortise.to));
      const inner = less(half(wide), height('innerHeight'));
      return { from: less(centre, inner), to: sum(centre, inner) };
    }
    const sightEdge = sum(horn, read(rail.width));
    const line = bead.n === 0n ? sightEdge : shown('mitre-end', 'sightEdge', sightEdge);
    return {
      from: sum(less(line, wide), height('outerHeight')),
      to: less(sightEdge, height('innerHeight')),
    };
  };
  return {
    step,
    bead,
    shoulders,
    stop,
    haunch: shown('haunch', 'length', exactly(stageOf(rails.bottom, 'haunch'), 'length', units)),
    tongue: tongueOf([stiles.left, stiles.right, rails.bottom, ...rails.mids, rails.top], panels, step),
    archFloor: archFloor(rails.top, step),
    size,
    tenonFaces: tenonFaces([stiles.left, stiles.right], step),
    tenon,
  };
}

/** The floor of an arched rail's groove, as it is sanded and slotted. */
function archFloor(rail: PlanPart, step: Step): Length | null {
  const smooth = stageOf(rail, 'smooth');
  if (smooth === undefined) return null;
  const depth = exactly(stageOf(rail, 'slot') ?? stageOf(rail, 'groove'), 'depth', step.units);
  return sum(
    asSet('smooth', 'radius', exactly(smooth, 'radius', step.units), step),
    asSet('groove', 'depth', depth, step),
  );
}

/** How wide the groove of a member comes out, and how wide it is by the plan; null where it has none. */
function grooveOf(member: PlanPart, step: Step): { readonly cut: Length; readonly exact: Length } | null {
  const { units } = step;
  const [groove, slot] = [stageOf(member, 'groove'), stageOf(member, 'slot')];
  const exact = lengthOf((groove ?? slot)?.settings.width, units);
  if (exact === null) return null;
  return { cut: groove === undefined ? exact : betweenWalls(member, step), exact };
}

/** A member's wall as it is shown: where its fence, its cutter and its blade stand for groove, shoulders and cheeks. */
function wallOf(member: PlanPart, step: Step): Length {
  const groove = stageOf(member, 'groove');
  const [stage, name] =
    groove === undefined
      ? ([stageOf(member, 'slot'), 'cutterHeight'] as const)
      : ([groove, 'fence'] as const);
  return asSet('groove', 'fence', exactly(stage, name, step.units), step);
}

/** What is left between a member's walls: its own thickness less both. */
export function betweenWalls(member: PlanPart, step: Step): Length {
  return less(lengthOf(member.thickness, step.units) ?? ZERO, times(wallOf(member, step), 2));
}

/**
 * How tenons come out that enter the mortises of these stiles, pared as is shown: off each face the least that lets them
 * in, where that leaves them no looser than 1/64 in (0.4 mm); else a step less, so that there is wood to plane. Of stock as
 * thick as the stiles that is what stands at their groove. A slot is as wide as its cutter, whatever the stock: a haunch
 * that is thicker is pared.
 */
function tenonFaces(stiles: readonly [PlanPart, PlanPart], step: Step): (rail: PlanPart) => TenonFaces {
  const narrower = ([one, other]: readonly [Length, Length]) => smaller(one, other);
  const [left, right] = stiles;
  const pared = narrower([paredTo(left, step), paredTo(right, step)]);
  const grooves = stiles.map((stile) => grooveOf(stile, step)?.cut ?? pared) as [Length, Length];
  const groove = narrower(grooves);
  return (rail) => {
    const thick = lengthOf(rail.thickness, step.units) ?? ZERO;
    const wall = half(less(thick, pared));
    const after = (height: Length) => less(thick, times(height, 2));
    const enters = larger(toMultiple(wall, 'up', step.fine), ZERO);
    const loose = less(pared, after(enters)).compare(LOOSEST[step.units]) > 0;
    const height = loose ? larger(toMultiple(wall, 'down', step.fine), ZERO) : enters;
    const thickness = after(height);
    const plane = thickness.compare(pared) > 0 ? pared : null;
    const haunch = (plane ?? thickness).compare(groove) > 0 ? groove : null;
    return { height, thickness, plane, haunch };
  };
}

/** No tenon is looser in its mortise: common practice, no source. */
const LOOSEST: Readonly<Record<Units, Length>> = { in: length(1, 64), mm: length(2, 5) };

/** How wide a stile's mortises are pared, as is shown. */
function paredTo(stile: PlanPart, step: Step): Length {
  return asSet('pare', 'width', betweenWalls(stile, step), step);
}

/** The narrowest groove or slot of the frame less the sliding fit. */
function tongueOf(members: readonly PlanPart[], panels: readonly PlanPart[], step: Step): Length {
  const raise = panels.map((panel) => stageOf(panel, 'raise')).find((each) => each !== undefined);
  const grooves = members.map((member) => grooveOf(member, step)).filter((each) => each !== null);
  const [first, ...others] = grooves;
  if (raise === undefined || first === undefined) return ZERO;
  const exact = exactly(raise, 'tongue', step.units);
  const narrowest = others.reduce((least, { cut }) => smaller(least, cut), first.cut);
  const fit = others.reduce((most, each) => larger(most, less(each.exact, exact)), less(first.exact, exact));
  return asSet('raise', 'tongue', less(narrowest, fit), step);
}
