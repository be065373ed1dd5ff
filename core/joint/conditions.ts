import type { ShopProfile } from '../shop/shop-profile.ts';
import { archConditions } from './arch-conditions.ts';
import type { Joint } from './derive.ts';
import { Findings } from './findings.ts';
import { frameConditions } from './frame-conditions.ts';
import { limitsFor } from '../length/limits.ts';
import { panelConditions } from './panel-conditions.ts';
import { tenonConditions } from './tenon-conditions.ts';
import type { Tooling } from './tooling.ts';

/** What keeps a door from being made, and what a foreman would say of one that can be made. */
export function conditions(joint: Joint, tooling: Tooling, profile: ShopProfile, path: string): Findings {
  const found = new Findings(path, profile.units);
  const limits = limitsFor(profile.units);
  frameConditions(joint, tooling, profile, limits, found);
  tenonConditions(joint, tooling, profile, limits, found);
  archConditions(joint, tooling, profile, found);
  panelConditions(joint, tooling, profile, limits, found);
  return found;
}
