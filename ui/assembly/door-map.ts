import { drawn } from '#core/views/drawn.ts';
import { partsOf } from '#core/plan/parts-of.ts';
import { stageOf } from '#core/plan/stage-of.ts';
import type { PlanDoor, PlanPart } from '#core/plan/plan.ts';

/** Where a part stands in a door that is being put together: a rectangle in the job's units, y down from the door's top. */
export interface Standing {
  readonly part: string;
  readonly code: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Its outline as SVG has it: a rectangle, hollowed or rounded by an arch. */
  readonly outline: string;
}

/** The parts of a door in their places, seen from the face side: its arch too: enough to see which are there, not to measure from. */
export function doorMap(door: PlanDoor): {
  readonly width: number;
  readonly height: number;
  readonly parts: readonly Standing[];
} {
  const { stiles, rails, panels } = partsOf(door);
  const stile = drawn(stiles.left.width);
  const between = drawn(door.values.shoulderToShoulder);
  const parts: Omit<Standing, 'outline'>[] = [];
  let up = 0;
  const place = ({ part, code }: PlanPart, x: number, wide: number, high: number, base: number) =>
    parts.push({ part, code, x, y: base, width: wide, height: high });
  for (const [k, rail] of [rails.bottom, ...rails.mids, rails.top].entries()) {
    const high = drawn(rail.width);
    place(rail, stile, between, high, up);
    up += high;
    const [sight, panel] = [door.values.sightHeights[k], panels[k]];
    if (sight === undefined || panel === undefined) continue;
    place(panel, stile, between, drawn(sight), up);
    up += drawn(sight);
  }
  place(stiles.left, 0, stile, up, 0);
  place(stiles.right, stile + between, stile, up, 0);
  const arch = archOf(rails.top);
  const middle = stile + between / 2;
  return {
    width: 2 * stile + between,
    height: up,
    parts: parts.map((each) => {
      const turned = { ...each, y: up - each.y - each.height };
      const edge =
        each.code === rails.top.code ? 'below' : each.code === panels.at(-1)?.code ? 'above' : null;
      return {
        ...turned,
        outline: outlineOf(turned, edge === null || arch === null ? null : { ...arch, middle, edge }),
      };
    }),
  };
}

interface Arch {
  readonly half: number;
  readonly radius: number;
  readonly rise: number;
}

/** The arch under a top rail; null where it is straight. */
function archOf(rail: PlanPart): Arch | null {
  const arch = stageOf(rail, 'arch')?.settings;
  if (arch === undefined) return null;
  return { half: drawn(arch.chord) / 2, radius: drawn(arch.radius), rise: drawn(arch.rise) };
}

/** A rectangle; the edge that an arch runs along follows it: hollow below a rail, round above a panel. */
function outlineOf(
  { x, y, width, height }: Omit<Standing, 'outline'>,
  arch: (Arch & { readonly middle: number; readonly edge: 'above' | 'below' }) | null,
): string {
  const [right, bottom] = [x + width, y + height];
  if (arch === null) return `M${x} ${y}H${right}V${bottom}H${x}Z`;
  const { middle, half, radius, rise } = arch;
  const [from, to, large] = [middle - half, middle + half, rise > half ? 1 : 0];
  return arch.edge === 'above'
    ? `M${x} ${y}H${from}A${radius} ${radius} 0 ${large} 1 ${to} ${y}H${right}V${bottom}H${x}Z`
    : `M${x} ${y}H${right}V${bottom}H${to}A${radius} ${radius} 0 ${large} 0 ${from} ${bottom}H${x}Z`;
}
