import type { Shape } from '../drawing/model.ts';
import { area, at, dimension, label, polygon, rectangle, stroke } from '../drawing/shapes.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { shoulderOf } from './rail-blank.ts';
import { endReach } from './rail-setups.ts';
import { member } from './stile-blank.ts';

/**
 * The haunch that stays beside the tenon, at the bench, outer edge up: its end and its height are pared to their lines. Where its
 * back is pared too, the rail is seen from its end beside it.
 */
export function haunchSetup(part: PlanPart, stage: StageOf<'haunch'>): Shape[] {
  const { width } = profileOf(part);
  const { settings: s } = stage;
  const shoulder = shoulderOf(part);
  const [long, high] = [drawn(s.length), drawn(s.height)];
  const reach = endReach(part);
  const tenon = stageOf(part, 'tenon')?.settings;
  const inner = tenon === undefined ? 0 : drawn(tenon.innerHeight);
  const end = shoulder - long;
  return [
    area(member(shoulder, reach, width, { left: false, right: true }), 'outline', 'wood'),
    area(rectangle(0, inner, shoulder, width - high), 'tenon', 'wood'),
    label(
      say('drawing.tenon'),
      at(shoulder / 2, (inner + width - high) / 2),
      'tenon-name',
      'normal',
      'middle',
      Infinity,
      {
        across: shoulder * 0.9,
      },
    ),
    ...(long > 0
      ? [
          area(rectangle(end, width - high, shoulder, width), 'haunch', 'wood'),
          area(stroke(at(end, width - high), at(end, width)), 'finished-line', 'none', 'cut'),
          label(
            say('drawing.to-the-line'),
            at(end - width * 0.03, width - high / 2),
            'line-name',
            'small',
            'end',
            high,
            {
              across: end * 0.94,
            },
          ),
        ]
      : []),
    label(
      say('drawing.outer-edge-up'),
      at((shoulder + reach) / 2, width * 0.88),
      'edge-name',
      'normal',
      'middle',
      Infinity,
      {
        across: (reach - shoulder) * 0.9,
      },
    ),
    label(say('drawing.bead-edge'), at((shoulder + reach) / 2, width * 0.1), 'edge-name', 'small'),
    ...(s.pareTo === undefined ? [] : fromTheEnd(part, s.pareTo, high, reach)),
    dimension('length', s.length, at(shoulder, width), at(end, width), 'above', 1, { datum: true }),
    dimension('height', s.height, at(0, width), at(0, width - high), 'left', 1, { datum: true }),
  ];
}

/** The rail from its end, right of it: what the back of the haunch gives up. */
function fromTheEnd(part: PlanPart, pareTo: string, high: number, reach: number): Shape[] {
  const { width, thickness } = profileOf(part);
  const cheek = stageOf(part, 'cheek')?.settings;
  if (cheek === undefined) return [];
  const [wall, thick, left] = [drawn(cheek.height), drawn(cheek.thickness), drawn(pareTo)];
  const front = reach + width * 0.3 + wall;
  const face = (key: 'drawing.front' | 'drawing.back', y: number, anchor: 'start' | 'end') =>
    label(
      say(key),
      at(front - wall + thickness * (anchor === 'start' ? 0.06 : 0.94), y),
      'face',
      'small',
      anchor,
      Infinity,
      {
        across: thickness * 0.88,
      },
    );
  return [
    area(rectangle(front - wall, 0, front - wall + thickness, width), 'from-end', 'wood'),
    area(
      polygon([
        at(front, width - high),
        at(front + left, width - high),
        at(front + left, width),
        at(front, width),
      ]),
      'haunch-end',
      'wood',
    ),
    area(
      rectangle(front + left, width - high, front + Math.max(left, thick), width),
      'waste',
      'waste',
      'none',
    ),
    area(stroke(at(front + left, width - high), at(front + left, width)), 'finished-line', 'none', 'cut'),
    face('drawing.front', width * 0.6, 'start'),
    face('drawing.back', width * 0.4, 'end'),
    dimension('pareTo', pareTo, at(front, width), at(front + left, width), 'above', 2, { datum: true }),
  ];
}
