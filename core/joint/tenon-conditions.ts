import { larger, type Length, less, sign, sum, times } from '../length/length.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';
import type { Findings } from './findings.ts';
import { leftOf } from './left-of.ts';
import type { Limits } from '../length/limits.ts';
import { widestTenon } from '../plan/wide-tenon.ts';
import { memberNamed } from './member.ts';
import type { Tooling } from './tooling.ts';

/** Tenons and mortises: what they need to hold, and what they leave of the stile. */
export function tenonConditions(
  joint: Joint,
  tooling: Tooling,
  _profile: ShopProfile,
  limits: Limits,
  found: Findings,
): void {
  const { spec, trimEachSide, trimEachEnd } = joint;
  const { bead, groove, tenon, mortise, horn } = spec;
  const reach = sum(bead, tenon.length);
  if (groove.depth.compare(reach) >= 0)
    found.fault('groove-mortise', 'groove.depth', { depth: groove.depth, bead, tenon: tenon.length });
  for (const [field, width] of tenonWidths(joint)) tenonWidth(field, width, joint, tooling, found);
  wideTenons(joint, limits, found);
  if (tenon.length.compare(times(groove.width, 2)) < 0)
    found.warn('tenon-short', 'tenon.length', { tenon: tenon.length, groove: groove.width });
  const depth = sum(reach, mortise.clearance);
  const left = less(joint.narrowStile, depth, trimEachSide);
  if (left.compare(limits.eighth) < 0)
    found.fault('behind-mortise', 'tenon.length', {
      left: leftOf(left),
      depth,
      trim: trimEachSide,
      least: limits.eighth,
    });
  else if (left.compare(limits.quarter) < 0)
    found.warn('behind-mortise', 'tenon.length', { left, depth, least: limits.quarter });
  const cover = less(tenon.outerSetback, trimEachEnd);
  if (sign(cover) <= 0) found.fault('cover', 'tenon.outerSetback', { trim: trimEachEnd });
  else if (cover.compare(limits.eighth) < 0)
    found.warn('cover', 'tenon.outerSetback', { cover, least: limits.eighth });
  if (sign(cover) > 0 && mortise.endPlay.compare(cover) >= 0)
    found.fault('end-play', 'mortise.endPlay', {
      endPlay: mortise.endPlay,
      trim: trimEachEnd,
      most: cover,
    });
  const fromEnd = sum(horn, tenon.outerSetback);
  if (fromEnd.compare(limits.threeEighths) < 0)
    found.warn('end-splits', 'horn', { left: fromEnd, least: limits.threeEighths });
  if (sign(tenon.haunchClearance) === 0 && groove.depth.compare(bead) > 0)
    found.warn('haunch-tight', 'tenon.haunchClearance', { usual: limits.thirtySecond });
  if (sign(mortise.endPlay) === 0) found.advise('no-end-play', 'mortise.endPlay');
  if (sign(horn) === 0) found.advise('no-horn', 'horn');
  if (sign(mortise.clearance) === 0) found.advise('no-clearance', 'mortise.clearance');
}

/** Each rail's tenon width with the field that makes it. */
function tenonWidths({ spec, topRailEnds, midRails }: Joint): [string, Length][] {
  const inner = sum(spec.bead, spec.tenon.innerSetback);
  const outer = sum(inner, spec.tenon.outerSetback);
  return [
    ['bottomRail.width', less(spec.bottomRail.width, outer)],
    ['topRail.width', less(topRailEnds, outer)],
    ...midRails.map(({ width, index }): [string, Length] => [
      `midRails[${index}].width`,
      less(width, times(inner, 2)),
    ]),
  ];
}

function tenonWidth(field: string, width: Length, joint: Joint, { chisel }: Tooling, found: Findings): void {
  const { groove, bead, tenon } = joint.spec;
  const part = memberNamed(field, joint);
  if (sign(width) <= 0) found.fault('tenon-width', field, { part, width: leftOf(width) });
  else if (chisel !== null && width.compare(chisel) < 0)
    found.fault('tenon-chisel', field, { part, width, chisel });
  else if (width.compare(times(groove.width, 2)) < 0)
    found.warn('tenon-narrow', field, { part, width, groove: groove.width });
  const eaten = less(groove.depth, bead, tenon.innerSetback);
  const edges = field.startsWith('midRails') ? 2 : 1;
  if (sign(eaten) > 0)
    found.warn('groove-eats-tenon', field, {
      part,
      eaten,
      width: larger(less(width, times(eaten, edges)), times(eaten, 0)),
    });
}

/** Over the widest a tenon is better made as two. */
function wideTenons(joint: Joint, limits: Limits, found: Findings): void {
  const most = widestTenon(joint.spec.groove.width, limits);
  for (const [field, width] of tenonWidths(joint))
    if (width.compare(most) > 0)
      found.advise('tenon-wide', field, { part: memberNamed(field, joint), width, most });
}
