import { less, sign } from '../length/length.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';
import type { Findings } from './findings.ts';
import type { Limits } from '../length/limits.ts';
import type { Tooling } from './tooling.ts';
import { movementConditions } from './movement-conditions.ts';

/** The panel in its groove: held, free, and thick enough. */
export function panelConditions(
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
  limits: Limits,
  found: Findings,
): void {
  const { spec, panelHold: hold, wall } = joint;
  const { clearance, thickness } = spec.panel;
  if (sign(hold) <= 0) {
    found.fault('panel-hold', 'panel.clearance', { clearance, depth: spec.groove.depth });
    return;
  }
  if (sign(tooling.tongue) <= 0)
    found.fault('panel-tongue', 'groove.width', { fit: profile.slidingFit, groove: spec.groove.width });
  if (hold.compare(limits.eighth) < 0)
    found.warn('panel-hold-small', 'panel.clearance', { hold, least: limits.eighth });
  if (hold.compare(clearance) <= 0)
    found.warn('panel-hold-clearance', 'panel.clearance', { hold, clearance });
  if (sign(clearance) === 0) found.warn('panel-no-clearance', 'panel.clearance');
  const room = less(spec.thickness, wall);
  if (thickness.compare(room) > 0)
    found.warn('panel-proud', 'panel.thickness', { thickness, proud: less(thickness, room) });
  if (thickness.compare(tooling.tongue) < 0)
    found.warn('panel-thin', 'panel.thickness', { thickness, tongue: tooling.tongue });
  if (sign(tooling.raise) > 0 && profile.panelBand.compare(spec.groove.depth) < 0)
    found.warn('band-narrow', 'groove.depth', { band: profile.panelBand, depth: spec.groove.depth });
  movementConditions(joint, profile, found);
}
