import type { PlanDoor } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';
import { say } from '../words/say.ts';
import type { Drawing } from '../drawing/model.ts';
import type { Hinge } from '../job/hinge-of.ts';
import { hingeMarks, nameInside, seenFromFront } from './door-marks.ts';
import { drawnAsBuilt } from './horn.ts';
import { drawn } from './drawn.ts';
import { area, at, dimension, polygon, rectangle } from '../drawing/shapes.ts';

/**
 * The opening as it was measured, less each side's reveal, with the door as built laid over it, from the front; and
 * what comes off at both ends of each edge. x and y from the door's bottom left corner as built, without horns. Null
 * where the opening was not surveyed.
 */
export function surveyView(door: PlanDoor, units: Units, hinge?: Hinge): Drawing | null {
  const { values } = door;
  if (values.survey === undefined) return null;
  const { left, right, bottom, top } = values.survey.takeOff;
  const { width, height } = drawnAsBuilt(values, units);
  const a = at(drawn(left.bottom), drawn(bottom.left));
  const b = at(width - drawn(right.bottom), drawn(bottom.right));
  const c = at(width - drawn(right.top), height - drawn(top.right));
  const d = at(drawn(left.top), height - drawn(top.left));
  const datum = { datum: true } as const;
  return {
    title: say('drawing.survey', { door: door.door }),
    units,
    shapes: [
      area(rectangle(0, 0, width, height), 'door-as-built', 'wood'),
      area(polygon([a, b, c, d]), 'opening', 'none', 'cut'),
      ...hingeMarks(hinge, width, height),
      ...nameInside(door),
      ...seenFromFront(hinge, width, height),
      dimension('takeOff', left.bottom, at(0, a.y), a, 'below', 1, { ...datum, place: 'left-bottom' }),
      dimension('takeOff', right.bottom, at(width, b.y), b, 'below', 1, {
        ...datum,
        place: 'right-bottom',
      }),
      dimension('takeOff', left.top, at(0, d.y), d, 'above', 1, { ...datum, place: 'left-top' }),
      dimension('takeOff', right.top, at(width, c.y), c, 'above', 1, { ...datum, place: 'right-top' }),
      dimension('takeOff', bottom.left, at(a.x, 0), a, 'left', 1, { ...datum, place: 'bottom-left' }),
      dimension('takeOff', top.left, at(d.x, height), d, 'left', 1, { ...datum, place: 'top-left' }),
      dimension('takeOff', bottom.right, at(b.x, 0), b, 'right', 1, { ...datum, place: 'bottom-right' }),
      dimension('takeOff', top.right, at(c.x, height), c, 'right', 1, { ...datum, place: 'top-right' }),
    ],
  };
}
