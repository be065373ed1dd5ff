import { length, type Length, less, sign, sum, times } from '../length/length.ts';
import { printLength } from '../length/print-length.ts';
import { realOf } from '../length/real.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';
import type { Findings } from './findings.ts';
import { leftOf } from './left-of.ts';
import type { Limits } from '../length/limits.ts';
import { memberNamed } from './member.ts';
import { panelLengths } from './panel.ts';
import type { Tooling } from './tooling.ts';

/** Sizes of the frame: what is left between its members, its walls, its bead, its tools, its short pieces. */
export function frameConditions(
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
  limits: Limits,
  found: Findings,
): void {
  const { spec, wall, fillet } = joint;
  const { groove, bead, thickness } = spec;
  const beaded = sign(bead) > 0;
  if (sign(joint.sightWidth) <= 0)
    found.fault('sight-width', 'stile.width', {
      stile: spec.stile.left,
      sightWidth: leftOf(joint.sightWidth),
      builtWidth: joint.builtWidth,
    });
  sightHeights(joint, found);
  if (groove.width.compare(thickness) >= 0)
    found.fault('groove-thickness', 'groove.width', { groove: groove.width, thickness });
  else if (sign(fillet) < 0) found.fault('bead-wall', 'bead', { bead, wall });
  else if (beaded && fillet.compare(bead) > 0) found.warn('fillet-over-bead', 'bead', { fillet, bead });
  trims(joint, found);
  if (beaded && bead.compare(limits.sixteenth) < 0)
    found.warn('bead-small', 'bead', { bead, least: limits.sixteenth });
  if (times(groove.width, 4).compare(thickness) < 0 || times(groove.width, 2).compare(thickness) > 0)
    found.warn('groove-share', 'groove.width', { groove: groove.width, thickness });
  if (wall.compare(limits.eighth) < 0)
    found.warn('wall-thin', 'groove.width', { wall, least: limits.eighth });
  if (tooling.chisel === null)
    found.fault('no-chisel', 'groove.width', {
      groove: groove.width,
      chisels: profile.chisels.map(printLength).join(', '),
    });
  else if (times(tooling.chisel, 2).compare(groove.width) < 0)
    found.warn('chisel-small', 'groove.width', { chisel: tooling.chisel, groove: groove.width });
  if (profile.ways.groove === 'saw') dado(joint, tooling, profile, found);
  behindGroove(joint, limits, found);
  strip(joint, tooling, profile, found);
  shortPieces(joint, limits, found);
}

/** The dado head that ploughs the groove in two passes. */
function dado({ spec }: Joint, tooling: Tooling, profile: ShopProfile, found: Findings): void {
  const groove = spec.groove.width;
  if (tooling.dado === null)
    found.fault('no-dado', 'groove.width', {
      groove,
      dados: profile.dadoWidths.map(printLength).join(', '),
    });
  else if (tooling.dado.equals(groove)) found.warn('dado-as-wide', 'groove.width', { groove });
}

function sightHeights({ sightHeights, midRails }: Joint, found: Findings): void {
  for (const [k, { centre, index }] of midRails.entries()) {
    const below = sightHeights[k];
    if (k > 0 && below !== undefined && sign(below) < 0)
      found.fault('mid-rails-overlap', `midRails[${index}].centre`, { centre, overlap: times(below, -1) });
  }
  const k = sightHeights.findIndex(
    (height, at) => sign(height) <= 0 && !(at > 0 && at < midRails.length && sign(height) < 0),
  );
  const sightHeight = sightHeights[k];
  if (sightHeight === undefined) return;
  const beside = midRails[k] ?? midRails.at(-1);
  const field = beside === undefined ? 'opening.height' : `midRails[${beside.index}].centre`;
  found.fault('sight-height', field, { sightHeight: leftOf(sightHeight) });
}

/** Nothing can be put on by trimming: at the size where both its sides are alike, else at the side that lacks something. */
function trims({ spec: { oversize, reveal }, trim }: Joint, found: Findings): void {
  for (const [size, first, second] of [
    ['width', 'left', 'right'],
    ['height', 'bottom', 'top'],
  ] as const) {
    const alike = reveal[first].equals(reveal[second]);
    for (const side of alike ? [first] : [first, second]) {
      if (sign(trim[side]) >= 0) continue;
      const told = { oversize: oversize[size], reveal: reveal[side], least: times(reveal[side], -2) };
      if (alike) found.fault('oversize', `oversize.${size}`, told);
      else
        found.fault('oversize.side', `reveal.${side}`, {
          ...told,
          side: { words: `named.${side}` },
          missing: less(trim[side], times(trim[side], 2)),
          needs: times(oversize[size], length(-1, 2)),
        });
    }
  }
}

/** What stays behind the groove's floor once the door is trimmed. */
function behindGroove(joint: Joint, limits: Limits, found: Findings): void {
  const { spec, trimEachSide, trimEachEnd } = joint;
  const depth = spec.groove.depth;
  const members: [string, Length][] = [
    ['topRail.width', less(spec.topRail.width, depth, trimEachEnd)],
    ['bottomRail.width', less(spec.bottomRail.width, depth, trimEachEnd)],
    ['stile.width', less(joint.narrowStile, depth, trimEachSide)],
    ...joint.midRails.map(({ width, index }): [string, Length] => [
      `midRails[${index}].width`,
      less(width, times(depth, 2)),
    ]),
  ];
  for (const [field, left] of members)
    if (sign(left) <= 0)
      found.fault('behind-groove', field, { part: memberNamed(field, joint), left: leftOf(left) });
    else if (left.compare(limits.threeEighths) < 0)
      found.warn('behind-groove', field, {
        part: memberNamed(field, joint),
        left,
        least: limits.threeEighths,
      });
}

function strip(joint: Joint, tooling: Tooling, profile: ShopProfile, found: Findings): void {
  const { spec } = joint;
  if (sign(spec.bead) <= 0 || profile.ways.strip !== 'rip' || profile.stripStation !== 'table-saw') return;
  const greatest = profile.blade.greatestHeight;
  if (spec.thickness.compare(greatest) >= 0) {
    found.fault('blade-height', 'thickness', { thickness: spec.thickness, greatest });
    return;
  }
  for (const [field, rail] of [
    ['bottomRail.width', spec.bottomRail.width],
    ['topRail.width', joint.topRailEnds],
  ] as const) {
    const shoulderLine = less(sum(spec.horn, rail), spec.bead);
    if (tooling.strip !== null && tooling.strip.lag >= realOf(shoulderLine))
      found.warn('lag', field, { lag: tooling.strip.lag, shoulderLine });
  }
}

function shortPieces(joint: Joint, limits: Limits, found: Findings): void {
  const least = limits.twelveInches;
  if (joint.railLength.compare(least) < 0)
    found.warn('short-piece', 'opening.width', { part: { part: 'rail' }, length: joint.railLength, least });
  if (joint.stileLength.compare(least) < 0)
    found.warn('short-piece', 'opening.height', {
      part: { part: 'stile' },
      length: joint.stileLength,
      least,
    });
  for (const { part, length } of panelLengths(joint))
    if (length.compare(least) < 0 && sign(length) > 0)
      found.warn('short-piece', 'opening.height', { part: { part }, length, least });
}
