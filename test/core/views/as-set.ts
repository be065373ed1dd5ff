import type { Area, Dimension, Drawing } from '#core/drawing/model.ts';
import type { Units } from '#core/length/units.ts';
import { leftToPare } from '#core/plan/left-to-pare.ts';
import type { SettingValue } from '#core/plan/plan.ts';
import { drawn } from '#core/views/drawn.ts';

/** What the machine is set to for a setting of a plan: its own value, or beside it where something is left for the chisel or the sandpaper. */
export function asSet(stage: string, name: string, value: SettingValue, units: Units): SettingValue {
  return leftToPare(stage, name, value, units)?.set ?? value;
}

/** The dimensions of a drawing. */
export function dimensionsOf({ shapes }: Drawing): Dimension[] {
  return shapes.filter((shape): shape is Dimension => shape.kind === 'dimension');
}

/** The areas of a drawing that are drawn with this pen. */
export function withPen({ shapes }: Drawing, pen: Area['pen']): Area[] {
  return shapes.filter((shape): shape is Area => shape.kind === 'area' && shape.pen === pen);
}

/** The areas of a drawing of this role. */
export function withRole({ shapes }: Drawing, role: string): Area[] {
  return shapes.filter((shape): shape is Area => shape.kind === 'area' && shape.role === role);
}

/** How far the ends of a dimension stand apart along its line. */
export function drawnLength({ from, to, side }: Dimension): number {
  const [x, y] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
  if (side === 'along') return Math.hypot(x, y);
  return side === 'left' || side === 'right' ? y : x;
}

/** By how much of its value a dimension is drawn too long or too short; one over a break is shorter on purpose. */
export function misdrawnBy(dimension: Dimension): number {
  const value = Math.abs(drawn(dimension.value));
  if (dimension.brokenAt !== undefined) return drawnLength(dimension) < value ? 0 : Infinity;
  return Math.abs(drawnLength(dimension) - value) / Math.max(value, 1e-9);
}
