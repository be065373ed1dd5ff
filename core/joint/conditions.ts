import type { Fault, Note } from '../plan/plan.ts';
import { printLength } from '../length/print-length.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';
import type { Tooling } from './tooling.ts';

/** What keeps a door from being made, and what a foreman would say of one that can be made. */
export function conditions(
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
  path: string,
): { faults: Fault[]; notes: Note[] } {
  const faults: Fault[] = [];
  if (joint.sightWidth.compare(0) <= 0)
    faults.push({
      path: `${path}.stile.width`,
      code: 'sight-width',
      message: `the stiles leave ${printLength(joint.sightWidth)} between them`,
    });
  if (tooling.chisel === null || tooling.dado === null)
    faults.push({
      path: `${path}.groove.width`,
      code: 'no-chisel',
      message: `no chisel or dado of the shop (${profile.chisels.map(printLength).join(', ')}) fits the groove`,
    });
  return { faults, notes: [] };
}
