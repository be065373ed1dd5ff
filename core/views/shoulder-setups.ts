import type { Shape } from '../drawing/model.ts';
import { area, at, dimension, label, rectangle } from '../drawing/shapes.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { shoulderOf } from './rail-blank.ts';
import { gaugeOver, squareBlade, tableUnder } from './saw-tools.ts';
import { stopAt } from './rail-setups.ts';
import { member } from './stile-blank.ts';

/** Seen from its edge a rail lies face down on the table, before the gauge: how far it is drawn, and its table, block and blade. */
interface FaceDown {
  readonly thickness: number;
  readonly reach: number;
  readonly block: number;
  readonly table: number;
  readonly kerf: number;
}

function faceDown(part: PlanPart, tenon: number): FaceDown {
  const { thickness } = profileOf(part);
  return {
    thickness,
    reach: Math.max(tenon * 2.4, tenon + thickness * 2),
    block: thickness * 0.85,
    table: thickness * 0.28,
    kerf: Math.min(tenon * 0.2, thickness * 0.16),
  };
}

/** Gauge, rail and table; what is done to both faces at both ends is said on the rail. */
function onTable({ thickness, reach, block, table }: FaceDown, tenon: number): Shape[] {
  const whole = { from: -block, to: reach };
  return [
    ...gaugeOver(whole, thickness, table),
    area(member(0, reach, thickness, { left: false, right: true }), 'side', 'wood'),
    ...tableUnder(whole, table),
    label(say('drawing.both-faces'), at((tenon + reach) / 2, thickness * 0.5), 'both', 'small'),
  ];
}

/** Shoulders: face down, the rail’s end against the stop; the blade’s side away from the stop cuts the line, a wall deep. */
export function shoulderSetup(part: PlanPart, { settings: s }: StageOf<'shoulder'>): Shape[] {
  const [stop, height] = [drawn(s.stop), drawn(s.height)];
  const down = faceDown(part, stop);
  const { thickness, reach, block, table, kerf } = down;
  return [
    ...onTable(down, stop),
    ...stopAt(0, thickness, block),
    area(rectangle(0, height, stop, thickness - height), 'tenon', 'none', 'hidden'),
    ...squareBlade(stop, height, { kerf, low: -table * 2.2 }),
    area(rectangle(stop - kerf, 0, stop, height), 'shoulder', 'waste', 'cut'),
    dimension('stop', s.stop, at(0, thickness), at(stop, height), 'above', 1, { datum: true }),
    dimension('height', s.height, at(reach, 0), at(reach, height), 'right', 1, KEPT),
  ];
}

/** Measured from its datum, its name beside it however narrow the drawing is. */
const KEPT = { datum: true, keepName: true } as const;

/**
 * The tenon's cheeks: the rail lies face down on the table, seen from its edge, and is crosscut side by side from the
 * shoulder to the end; then the same on the other face, and at the other end. The stop block stays as for the shoulders.
 */
export function cheekSetup(part: PlanPart, { settings: s }: StageOf<'cheek'>): Shape[] {
  const [wall, thick] = [drawn(s.height), drawn(s.thickness)];
  const shoulder = stageOf(part, 'shoulder')?.settings;
  const tenon = shoulderOf(part);
  const down = { ...faceDown(part, tenon), block: profileOf(part).thickness * 0.3 };
  const { thickness, reach, block, table, kerf } = down;
  return [
    ...onTable(down, tenon),
    ...stopAt(0, thickness, block),
    area(rectangle(0, thickness - wall, tenon, thickness), 'waste-above', 'waste', 'hidden'),
    area(rectangle(0, 0, tenon, wall), 'waste', 'waste', 'cut'),
    ...squareBlade(tenon, wall, { kerf, low: -table * 2.2 }),
    // Where its length stands over it, that names the tenon: a name beside the note on the rail would be pushed onto the waste.
    ...(shoulder === undefined
      ? [
          label(
            say('drawing.tenon'),
            at(tenon * 0.08, thickness / 2),
            'tenon-name',
            'small',
            'start',
            thick * 0.9,
          ),
        ]
      : [
          dimension('tenonLength', shoulder.stop, at(0, thickness), at(tenon, thickness), 'above', 1, {
            datum: true,
          }),
        ]),
    dimension('height', s.height, at(reach, 0), at(reach, wall), 'right', 1, KEPT),
    dimension('thickness', s.thickness, at(0, wall), at(0, wall + thick), 'left', 1),
  ];
}
