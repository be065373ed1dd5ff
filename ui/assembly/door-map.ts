import { drawn } from '#core/views/plan-number.ts';
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
  const named = (name: string) => door.parts.find(({ part }) => part === name);
  const stile = drawn(named('stile-left')?.width);
  const between = drawn(door.values.shoulderToShoulder);
  const panels = door.values.sightHeights.map(drawn);
  const rails = ['rail-bottom', ...panels.slice(1).map((_, k) => `rail-mid-${k + 1}`), 'rail-top'];
  const parts: Omit<Standing, 'outline'>[] = [];
  let up = 0;
  const place = (name: string, x: number, wide: number, high: number, base: number) => {
    const part = named(name);
    if (part !== undefined)
      parts.push({ part: part.part, code: part.code, x, y: base, width: wide, height: high });
  };
  for (const [k, rail] of rails.entries()) {
    const high = drawn(named(rail)?.width);
    place(rail, stile, between, high, up);
    up += high;
    const sight = panels[k];
    if (sight === undefined) continue;
    place(panels.length === 1 ? 'panel' : `panel-${k + 1}`, stile, between, sight, up);
    up += sight;
  }
  place('stile-left', 0, stile, up, 0);
  place('stile-right', stile + between, stile, up, 0);
  const arch = archOf(named('rail-top'));
  const highest = panels.length === 1 ? 'panel' : `panel-${panels.length}`;
  const middle = stile + between / 2;
  return {
    width: 2 * stile + between,
    height: up,
    parts: parts.map((each) => {
      const turned = { ...each, y: up - each.y - each.height };
      const edge = each.part === 'rail-top' ? 'below' : each.part === highest ? 'above' : null;
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
function archOf(rail: PlanPart | undefined): Arch | null {
  const arch = rail?.stages.find(({ stage }) => stage === 'arch')?.settings;
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
