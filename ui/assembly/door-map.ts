import { drawn } from '#core/views/drawn.ts';
import { headOfRail } from '#core/views/rail-blank.ts';
import { type Head, headRunsBack } from '#core/outline/head.ts';
import { moved } from '#core/outline/moved.ts';
import { openingOutline } from '#core/outline/opening-outline.ts';
import type { Outline } from '#core/outline/outline.ts';
import { pathData } from '#core/outline/path-data.ts';
import { partsOf } from '#core/plan/parts-of.ts';
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
  const head = headOfRail(rails.top);
  const placed: Placed[] = [];
  let up = 0;
  const place = (part: PlanPart, x: number, base: number, high: number, outline: Outline) =>
    placed.push({ part, x, base, high, outline });
  for (const [k, rail] of [rails.bottom, ...rails.mids, rails.top].entries()) {
    const high = drawn(rail.width);
    place(rail, stile, up, high, railFace(between, high, rail === rails.top ? head : null));
    up += high;
    const [text, panel] = [door.values.sightHeights[k], panels[k]];
    if (text === undefined || panel === undefined) continue;
    const sight = drawn(text);
    place(panel, stile, up, sight, openingOutline(between, sight, panel === panels.at(-1) ? head : null));
    up += sight;
  }
  for (const [part, x] of [
    [stiles.left, 0],
    [stiles.right, stile + between],
  ] as const)
    place(part, x, 0, up, openingOutline(stile, up, null));
  return { width: 2 * stile + between, height: up, parts: placed.map((each) => standing(each, up)) };
}

/** A part's outline, its lower left corner at the origin, and where that stands; y up. */
interface Placed {
  readonly part: PlanPart;
  readonly x: number;
  readonly base: number;
  readonly high: number;
  readonly outline: Outline;
}

/** A rail between the stiles, its lower edge as the head runs that it has. */
function railFace(width: number, high: number, head: Head): Outline {
  return {
    start: { x: 0, y: 0 },
    runs: [
      ...headRunsBack(width, 0, head),
      { kind: 'line', to: { x: width, y: high } },
      { kind: 'line', to: { x: 0, y: high } },
    ],
  };
}

/** The same with y down from the door's top, as a screen has it. */
function standing({ part, x, base, high, outline }: Placed, top: number): Standing {
  const onScreen = moved(outline, (point) => ({ x: x + point.x, y: top - base - point.y }), true);
  const width = Math.max(outline.start.x, ...outline.runs.map(({ to }) => to.x));
  return {
    part: part.part,
    code: part.code,
    x,
    y: top - base - high,
    width,
    height: high,
    outline: pathData(onScreen),
  };
}
