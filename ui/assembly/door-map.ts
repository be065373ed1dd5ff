import { drawn } from '#core/drawing/plan-number.ts';
import type { PlanDoor } from '#core/plan/plan.ts';

/** Where a part stands in a door that is being put together: a rectangle in the job's units, y down from the door's top. */
export interface Standing {
  readonly part: string;
  readonly code: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The parts of a door in their places, seen from the face side: enough to see which are there, not to measure from. */
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
  const parts: Standing[] = [];
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
  return {
    width: 2 * stile + between,
    height: up,
    parts: parts.map((each) => ({ ...each, y: up - each.y - each.height })),
  };
}
