import { larger, less, length, type Length, smaller, sum, times, ZERO } from '../length/length.ts';
import { readPrinted } from '../length/read-printed.ts';
import type { Units } from '../length/units.ts';
import { hornsOf } from '../plan/as-built.ts';
import { faceSeen } from '../plan/face-seen.ts';
import { readPart } from '../plan/part-name.ts';
import { partsOf } from '../plan/parts-of.ts';
import { placeEnd } from '../plan/place-name.ts';
import type { PlanDoor, PlanPart } from '../plan/plan.ts';
import { stageOf, stagesOf } from '../plan/stage-of.ts';
import { trimOf } from '../plan/trim-of.ts';

/** From one place to another, both from the same end or edge. */
export interface Stretch {
  readonly from: Length;
  readonly to: Length;
}

/**
 * The back of a part with what is cut away or bears taken off. Along: from a stile's or panel's bottom end, from either
 * end of a rail. Across: from the outer edge, from either edge of a mid rail or a panel.
 */
export interface BackFace {
  /** What outlasts every cut. */
  readonly lasting: { readonly along: Stretch; readonly across: Stretch };
  /** What also bears on no fence, gauge or table where a sticker's thickness would spoil the cut. */
  readonly clear: { readonly along: readonly Stretch[]; readonly across: Stretch };
}

/**
 * The part of a part's back where a sticker may be, from the plan alone.
 *
 * Cut away: horns and trim at both ends and the outer edge (the survey's larger amounts where there is one), the width
 * of the bead along a sight edge (strip, mitres and notches go through the full thickness), the arch, tenons and their
 * shoulders, a panel's band or what of it stands in the groove.
 *
 * Bearing: a sticker under a face tilts the work. Where it lies twice as far from the end or edge that bears as the cut
 * does, the cut moves by half a sticker's thickness at most (0.05 mm), which is let pass; nearer it is not. So twice the
 * groove's depth along an edge that is grooved on the saw (each face is once to the fence), twice the shoulder's or mitre's distance at
 * a rail's ends, twice a raised panel's band, and on a stile the stretch at each cut whose fence or gauge the back meets.
 * Bead and slot are run front down: the back bears on nothing.
 */
export function backFace(door: PlanDoor, part: PlanPart, units: Units): BackFace {
  const read: Read = (value) => (value === undefined ? ZERO : readPrinted(value, units));
  switch (readPart(part).kind) {
    case 'stile':
      return stileBack(door, part, units, read);
    case 'rail':
      return railBack(door, part, read);
    case 'panel':
      return panelBack(door, part, read);
  }
}

/** A printed value read back; 0 where there is none. */
type Read = (value: string | undefined) => Length;

/** A gauge's or mortiser's fence reaches this far to each side of the cut: common practice, no source. */
const REACH: Readonly<Record<Units, Length>> = { in: length(4), mm: length(100) };

function stileBack(door: PlanDoor, part: PlanPart, units: Units, read: Read): BackFace {
  const long = read(part.length);
  const horns = hornsOf(door, part, units);
  const off = takenOff(door, read);
  const ends: Stretch = { from: sum(horns.bottom, off.bottom), to: less(long, horns.top, off.top) };
  const side = readPart(part).at === 'left' ? off.left : off.right;
  const { bead, fence } = edgeZones(part, read);
  const wide = read(part.width);
  const bearing = stileBearing(part, long, REACH[units], read);
  return {
    lasting: { along: ends, across: { from: side, to: less(wide, bead) } },
    clear: { along: without(ends, bearing), across: { from: side, to: less(wide, larger(bead, fence)) } },
  };
}

/** The stretches of a stile's back that meet the mortiser's fence or the mitre gauge, from the bottom end. */
function stileBearing(part: PlanPart, long: Length, reach: Length, read: Read): Stretch[] {
  const stretch = (end: 'top' | 'bottom', from: string, to: string): Stretch => {
    const near = larger(ZERO, less(read(from), reach));
    const far = smaller(times(read(to), 2), sum(read(to), reach));
    return end === 'bottom' ? { from: near, to: far } : { from: less(long, far), to: less(long, near) };
  };
  // Bead edge up; who sees the front has the back to the mortiser's fence.
  const mortises = (stageOf(part, 'mortise')?.places ?? []).flatMap(({ at, settings: { start, stop } }) => {
    const end = placeEnd(at);
    return faceSeen(part, { leftEnd: end, above: 'bead' }) === 'back' ? [] : [stretch(end, start, stop)];
  });
  // Sight edge down, the gauge on the side one stands: the face one sees is the one that meets it.
  const gauged = (end: 'top' | 'bottom') => faceSeen(part, { leftEnd: end, above: 'outer' }) === 'back';
  const mitres = stagesOf(part, 'mitre-end').flatMap(({ settings: { fromEnd, shoulderLine, sightEdge } }) =>
    gauged(fromEnd) ? [stretch(fromEnd, shoulderLine, sightEdge)] : [],
  );
  const notches = stagesOf(part, 'notch').flatMap(({ settings: { fromEnd, from, to } }) =>
    gauged(fromEnd) ? [stretch(fromEnd, from, to)] : [],
  );
  return [...mortises, ...mitres, ...notches];
}

function railBack(door: PlanDoor, part: PlanPart, read: Read): BackFace {
  const [long, wide] = [read(part.length), read(part.width)];
  const shoulder = read(stageOf(part, 'shoulder')?.settings.stop);
  const cut = larger(shoulder, read(stageOf(part, 'mitre')?.settings.sightEdge));
  const arch = read(stageOf(part, 'arch')?.settings.rise);
  const { bead, fence } = edgeZones(part, read);
  const off = takenOff(door, read);
  const { at } = readPart(part);
  const across = (sight: Length): Stretch => {
    if (at === 'bottom') return { from: off.bottom, to: less(wide, sight) };
    if (at === 'top') return { from: off.top, to: less(wide, larger(sight, arch)) };
    return { from: sight, to: less(wide, sight) };
  };
  const twice = times(cut, 2);
  return {
    lasting: { along: { from: cut, to: less(long, cut) }, across: across(bead) },
    clear: { along: [{ from: twice, to: less(long, twice) }], across: across(larger(bead, fence)) },
  };
}

function panelBack(door: PlanDoor, part: PlanPart, read: Read): BackFace {
  const [long, wide] = [read(part.length), read(part.width)];
  const head = stageOf(part, 'cutout');
  const top = head === undefined ? long : read(head.settings.sideHeight);
  const sunk = read(stageOf(partsOf(door).stiles.left, 'groove')?.settings.depth);
  const band = read(stageOf(part, 'raise')?.settings.band);
  const inside = (edge: Length) => ({
    along: { from: edge, to: less(top, edge) },
    across: { from: edge, to: less(wide, edge) },
  });
  const clear = inside(larger(sunk, times(band, 2)));
  return { lasting: inside(larger(sunk, band)), clear: { along: [clear.along], across: clear.across } };
}

/** What the bead's width takes off a sight edge, and the stretch beside it that meets the saw's fence when it is grooved. */
function edgeZones(part: PlanPart, read: Read): { readonly bead: Length; readonly fence: Length } {
  return {
    bead: read(stageOf(part, 'bead')?.settings.bead),
    fence: times(read(stageOf(part, 'groove')?.settings.depth), 2),
  };
}

/** The most that comes off each edge of the door: as planned, or as the survey of the opening says. */
function takenOff(door: PlanDoor, read: Read) {
  const { survey } = door.values;
  const trim = trimOf(door.values);
  const most = (planned: string, ...surveyed: readonly (string | undefined)[]) =>
    surveyed.map(read).reduce(larger, larger(ZERO, read(planned)));
  const off = survey?.takeOff;
  return {
    left: most(trim.left, off?.left.bottom, off?.left.top),
    right: most(trim.right, off?.right.bottom, off?.right.top),
    bottom: most(trim.bottom, off?.bottom.left, off?.bottom.right),
    top: most(trim.top, off?.top.left, off?.top.right),
  };
}

/** What is left of a stretch when others are taken out, in order. */
function without(whole: Stretch, taken: readonly Stretch[]): Stretch[] {
  const left: Stretch[] = [];
  let from = whole.from;
  for (const each of taken.toSorted((a, b) => a.from.compare(b.from))) {
    if (each.from.compare(from) > 0) left.push({ from, to: smaller(each.from, whole.to) });
    from = larger(from, each.to);
  }
  left.push({ from, to: whole.to });
  return left.filter((each) => each.to.compare(each.from) > 0);
}
