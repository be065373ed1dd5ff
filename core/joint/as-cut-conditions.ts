import { half, largestUpTo, less, type Length, sign, sum, times, ZERO } from '../length/length.ts';
import { limitsFor } from '../length/limits.ts';
import { type DoorAsCut, partSizes } from '../measured/measured.ts';
import type { PartName } from '../plan/part-name.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import { deriveJoint, type Joint } from './derive.ts';
import { Findings } from './findings.ts';
import { panelConditions } from './panel-conditions.ts';
import { panelLengths } from './panel.ts';
import { railFit } from './rail-fit.ts';
import { sharedHorn, topHornOf } from './stile-as-cut.ts';
import { toolingFor } from './tooling.ts';

/**
 * What is to be said of parts as they came out: where an error can be taken up, where it cannot, and what to do then.
 * Paths are those of the measured sizes of this door. `told` is what is said of the door already.
 */
export function asCutConditions(
  joint: Joint,
  asCut: DoorAsCut,
  door: string,
  profile: ShopProfile,
  told: Findings,
): Findings {
  const found = new Findings(`doors.${door}.parts`, profile.units);
  const stiles = ['stile-left', 'stile-right'] as const;
  for (const part of stiles) stileLength(part, joint, asCut, profile, found);
  const rails: readonly PartName[] = [
    'rail-bottom',
    ...joint.midRails.map((_, k): PartName => `rail-mid-${k + 1}`),
    'rail-top',
  ];
  for (const part of rails) railLength(part, joint, asCut, found);
  stileGrooves(joint, asCut, found);
  for (const part of stiles) ownChisel(part, joint, asCut, profile, found);
  for (const panel of panelLengths(joint)) panelSizes(panel, joint, asCut, profile, told, found);
  return found;
}

/** The horn at a stile's top takes its error; past that, trimming may. */
function stileLength(
  part: 'stile-left' | 'stile-right',
  joint: Joint,
  asCut: DoorAsCut,
  profile: ShopProfile,
  found: Findings,
): void {
  const { length } = partSizes(asCut, part);
  if (length === undefined || length.equals(joint.stileLength)) return;
  const { spec, trim } = joint;
  const field = `${part}.length`;
  const horn = topHornOf(joint, length);
  const shared = sharedHorn(joint, length);
  const short = less(ZERO, horn);
  const remedy =
    sign(shared) >= 0
      ? ({ words: 'remedy.horn', figures: { horn: shared } } as const)
      : ({ words: 'remedy.new-part' } as const);
  const figures = { part: { part }, short, trim: trim.top, remedy };
  if (short.compare(trim.top) > 0) return found.fault('stile-short', field, figures);
  if (sign(short) > 0) return found.warn('stile-short', field, figures);
  const fromEnd = sum(horn, spec.tenon.outerSetback);
  const least = limitsFor(profile.units).threeEighths;
  const usual = sum(spec.horn, spec.tenon.outerSetback);
  if (fromEnd.compare(least) < 0 && usual.compare(least) >= 0)
    found.warn('stile-end-splits', field, { part: { part }, left: fromEnd, least });
}

/** Both tenons of a rail take half of its error each, where they may. */
function railLength(part: PartName, joint: Joint, asCut: DoorAsCut, found: Findings): void {
  const { length } = partSizes(asCut, part);
  if (length === undefined || length.equals(joint.railLength)) return;
  const field = `${part}.length`;
  const { shoulderToShoulder, railLength: planned } = joint;
  const named = { part: { part }, length, planned, shoulderToShoulder } as const;
  const fit = railFit(joint, length);
  if (fit.kind === 'fits')
    found.advise('rail-stop', field, {
      ...named,
      stop: fit.stop,
      room: less(sum(joint.spec.tenon.length, joint.spec.mortise.clearance), fit.stop),
    });
  else found.warn(fit.kind === 'long' ? 'rail-long' : 'rail-short', field, { ...named, by: fit.by });
}

/** Tenons are as thick as the narrower of the stiles' grooves is wide: in the wider one they have room. */
function stileGrooves({ spec }: Joint, asCut: DoorAsCut, found: Findings): void {
  const of = (part: 'stile-left' | 'stile-right') => {
    const measured = partSizes(asCut, part).grooveWidth;
    return { part, groove: measured ?? spec.groove.width, measured: measured !== undefined };
  };
  const [left, right] = [of('stile-left'), of('stile-right')];
  if (left.groove.equals(right.groove)) return;
  const [wide, narrow] = left.groove.compare(right.groove) > 0 ? [left, right] : [right, left];
  found.warn('grooves-differ', `${(wide.measured ? wide : narrow).part}.grooveWidth`, {
    part: { part: wide.part },
    wide: wide.groove,
    narrow: narrow.groove,
    play: less(wide.groove, narrow.groove),
  });
}

const TOO_LARGE = { width: 'panel-too-wide', length: 'panel-too-long' } as const;
const TOO_SMALL = { width: 'panel-too-narrow', length: 'panel-too-short' } as const;

/** A stile whose own groove is narrower than any chisel cannot be mortised in it. */
function ownChisel(
  part: 'stile-left' | 'stile-right',
  { spec }: Joint,
  asCut: DoorAsCut,
  { chisels }: ShopProfile,
  found: Findings,
): void {
  const { grooveWidth: groove } = partSizes(asCut, part);
  if (groove === undefined || largestUpTo(chisels, groove) !== null) return;
  found.warn('stile-no-chisel', `${part}.grooveWidth`, {
    part: { part },
    groove,
    planned: spec.groove.width,
  });
}

/** A panel as it came out still goes in, and is still held. */
function panelSizes(
  { part, length: height, sight }: ReturnType<typeof panelLengths>[number],
  joint: Joint,
  asCut: DoorAsCut,
  profile: ShopProfile,
  told: Findings,
  found: Findings,
): void {
  const own = partSizes(asCut, part);
  const { spec, sightWidth, panelHold } = joint;
  const { depth } = spec.groove;
  const planned = { length: height, width: sum(sightWidth, times(panelHold, 2)) };
  const between = { length: sight, width: sightWidth };
  const known = new Set(told.notes.map(({ id }) => id));
  for (const size of ['width', 'length'] as const) {
    const is = own[size];
    if (is === undefined || is.equals(planned[size])) continue;
    const field = `${part}.${size}`;
    const hold = half(less(is, between[size]));
    const figures = { part: { part }, size: is, planned: planned[size] };
    const room = sum(between[size], times(depth, 2));
    if (is.compare(room) > 0) found.warn(TOO_LARGE[size], field, { ...figures, room });
    else if (sign(hold) <= 0) found.warn(TOO_SMALL[size], field, figures);
    else ownNotes(hold, {}, size === 'width', field);
  }
  const { thickness } = own;
  if (thickness !== undefined && !thickness.equals(spec.panel.thickness))
    ownNotes(panelHold, { thickness }, false, `${part}.thickness`);

  /** What holds of every panel, of this one as it came out; said once. Only its width swells and shrinks. */
  function ownNotes(hold: Length, more: { thickness?: Length }, moves: boolean, field: string): void {
    const { species: _species, ...still } = spec.panel;
    const panel = { ...(moves ? spec.panel : still), ...more, clearance: less(depth, hold) };
    const seen = deriveJoint({ ...spec, panel });
    const own = new Findings('', profile.units);
    panelConditions(seen, toolingFor(seen, profile), profile, limitsFor(profile.units), own);
    for (const note of own.notes) {
      if (known.has(note.id)) continue;
      known.add(note.id);
      found.notes.push({ ...note, path: found.at(field) });
    }
  }
}
