import type { Hinge } from '../job/hinge-of.ts';
import { partsOf } from '../plan/parts-of.ts';
import type { PlanDoor } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import type { Shape } from '../drawing/model.ts';
import { drawn } from './drawn.ts';
import { area, at, label, rectangle } from '../drawing/shapes.ts';

/** The door's openings from the bottom up: from the sight edge below to the one above (an arch begins there). */
export function openingsOf(door: PlanDoor): { from: number; to: number; text: string }[] {
  const { bottom, mids } = partsOf(door).rails;
  const rails = [bottom, ...mids];
  let y = 0;
  return door.values.sightHeights.map((text, k) => {
    const from = y + drawn(rails[k]?.width ?? '0');
    y = from + drawn(text);
    return { from, to: y, text };
  });
}

/** The door's name inside its highest opening, no wider than it is; read upwards where the door is too slender for it. */
export function nameInside(door: PlanDoor): Shape[] {
  const left = drawn(partsOf(door).stiles.left.width);
  const sight = drawn(door.values.sightWidth);
  const [highest] = openingsOf(door).toSorted((a, b) => b.to - b.from - (a.to - a.from));
  if (highest === undefined) return [];
  const where = at(left + sight / 2, (highest.from + highest.to) / 2);
  return [
    label(door.door, where, 'door-name', 'large', 'middle', (highest.to - highest.from) * 0.2, {
      across: sight * 0.8,
      ground: true,
      mayTurn: true,
    }),
  ];
}

/**
 * Above a door: that it is seen from the front, and the side that it is hung on where that is known. `top` is the upper end
 * of what is drawn, `up` how far above it the words stand, in heights of the type.
 */
export function seenFromFront(hinge: Hinge | undefined, width: number, top: number, up = 0.8): Shape[] {
  const words = say(hinge === undefined ? 'drawing.from-front' : `drawing.from-front-${hinge}`);
  return [label(words, at(width / 2, top), 'from-front', 'small', 'middle', Infinity, { shift: at(0, up) })];
}

/** Two hinges at the door's edge on the side that it is hung on. */
export function hingeMarks(hinge: Hinge | undefined, width: number, height: number): Shape[] {
  if (hinge === undefined) return [];
  const out = Math.min(width, height) * 0.02;
  const [x1, x2] = hinge === 'left' ? [-out, out * 0.6] : [width - out * 0.6, width + out];
  return [0.1, 0.82].map((share) =>
    area(rectangle(x1, height * share, x2, height * (share + 0.08)), 'hinge', 'ink', 'edge'),
  );
}
