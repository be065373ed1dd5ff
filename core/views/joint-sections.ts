import { moved } from '../outline/moved.ts';
import type { PlanDoor, PlanPart } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';
import { say } from '../words/say.ts';
import type { Drawing, Shape } from '../drawing/model.ts';
import { drawn, profileOf, stageOf } from './plan-number.ts';
import { memberSection } from './section-view.ts';
import { area, at, dimension, label, polygon, rectangle, stroke } from '../drawing/shapes.ts';

/** The two sections that show how a door goes together, each a drawing of its own. None where a part is missing. */
export function jointSections(door: PlanDoor, units: Units): Drawing[] {
  const find = (name: string) => door.parts.find(({ part }) => part === name);
  const [stile, rail] = [find('stile-left'), find('rail-bottom')];
  const panel = find('panel') ?? find('panel-1');
  if (stile === undefined || rail === undefined || panel === undefined) return [];
  return [
    {
      title: say('drawing.section-panel', { door: door.door }),
      units,
      shapes: panelSection(door, stile, panel),
    },
    { title: say('drawing.section-tenon', { door: door.door }), units, shapes: tenonSection(stile, rail) },
  ];
}

/**
 * Left stile and panel cut across, seen from above, the front at the top: x from the stile's outer edge, y from its
 * back. Bead, fillet and groove are the stile's, the tongue the panel's.
 */
function panelSection(door: PlanDoor, stile: PlanPart, panel: PlanPart): Shape[] {
  const { width, thickness, bead, fillet, wall, grooveWidth, grooveDepth } = profileOf(stile);
  const sections = [stageOf(stile, 'bead')?.settings, stageOf(stile, 'groove')?.settings];
  const [beaded, grooved] = sections;
  const hold = (drawn(panel.width) - drawn(door.values.sightWidth)) / 2;
  const shown = width * 2;
  const member = moved(memberSection(stile, { bead: true, groove: true }), ({ x, y }) =>
    at(y, thickness - x),
  );
  return [
    area(member, 'section', 'section'),
    area(panelEdge(panel, width - hold, thickness - wall, shown), 'panel-section', 'section'),
    ...faces(width * 0.3, thickness),
    ...dimension('width', stile.width, at(0, 0), at(width, 0), 'below', 2),
    ...dimension('depth', grooved?.depth, at(width, wall), at(width - grooveDepth, wall), 'below', 1, {
      datum: true,
    }),
    ...dimension(
      'bead',
      beaded?.bead,
      at(width, thickness - fillet),
      at(width - bead, thickness),
      'above',
      1,
      {
        datum: true,
      },
    ),
    ...dimension('thickness', stile.thickness, at(0, 0), at(0, thickness), 'left', 2),
    ...dimension('grooveWidth', grooved?.width, at(0, wall), at(0, wall + grooveWidth), 'left', 1),
    ...dimension('fillet', beaded?.fillet, at(shown, thickness), at(shown, thickness - fillet), 'right', 1, {
      datum: true,
    }),
    ...dimension('wall', grooved?.fence, at(shown, thickness), at(shown, thickness - wall), 'right', 2, {
      datum: true,
    }),
    ...dimension(
      'panelThickness',
      panel.thickness,
      at(shown, thickness - wall),
      at(shown, thickness - wall - drawn(panel.thickness)),
      'right',
      3,
    ),
  ];
}

/** The panel near its edge, its front at the front wall of the groove, its tongue in the groove where it is raised; broken off beyond. */
function panelEdge(panel: PlanPart, edge: number, front: number, upTo: number) {
  const raise = stageOf(panel, 'raise')?.settings;
  const back = front - drawn(panel.thickness);
  if (raise === undefined) return rectangle(edge, back, upTo, front);
  const [tongue, band] = [front - drawn(raise.tongue), Math.min(upTo, edge + drawn(raise.band))];
  return polygon([
    at(edge, front),
    at(edge, tongue),
    at(band, tongue),
    at(band, back),
    at(upTo, back),
    at(upTo, front),
  ]);
}

/**
 * Left stile and rail cut level with the tenon, seen from above, the front at the top. The stile's bead is cut away
 * here to the shoulder line; its mortise goes deeper than the tenon is long. The rail lies along its grain, so it is
 * not hatched.
 */
function tenonSection(stile: PlanPart, rail: PlanPart): Shape[] {
  const { width, thickness, bead, wall, grooveWidth } = profileOf(stile);
  const [shoulder, cheek] = [stageOf(rail, 'shoulder')?.settings, stageOf(rail, 'cheek')?.settings];
  const mortise = stageOf(stile, 'mortise')?.settings;
  const [tenon, depth] = [drawn(shoulder?.stop), drawn(mortise?.depthFromEdge)];
  const line = width - bead;
  const shown = width * 1.8;
  const [low, high] = [wall, wall + grooveWidth];
  return [
    area(
      polygon([
        at(0, 0),
        at(line, 0),
        at(line, low),
        at(width - depth, low),
        at(width - depth, high),
        at(line, high),
        at(line, thickness),
        at(0, thickness),
      ]),
      'section',
      'section',
    ),
    area(
      polygon([
        at(line, 0),
        at(shown, 0),
        at(shown, thickness),
        at(line, thickness),
        at(line, high),
        at(line - tenon, high),
        at(line - tenon, low),
        at(line, low),
      ]),
      'rail-section',
      'wood',
    ),
    area(stroke(at(width, -thickness * 0.1), at(width, thickness * 1.1)), 'sight-edge', 'none', 'centre'),
    ...faces(shown * 0.85, thickness),
    ...dimension('depthFromEdge', mortise?.depthFromEdge, at(width, 0), at(width - depth, low), 'below', 2, {
      datum: true,
    }),
    ...dimension('tenonLength', shoulder?.stop, at(line, 0), at(line - tenon, low), 'below', 1, {
      datum: true,
    }),
    ...dimension('width', stile.width, at(0, thickness), at(width, thickness), 'above', 2),
    ...dimension(
      'bead',
      stageOf(stile, 'bead')?.settings.bead,
      at(width, thickness),
      at(line, thickness),
      'above',
      1,
      { datum: true },
    ),
    ...dimension('thickness', stile.thickness, at(0, 0), at(0, thickness), 'left', 1),
    ...dimension('tenonThickness', cheek?.thickness, at(shown, low), at(shown, high), 'right', 1),
    ...dimension('wall', cheek?.height, at(shown, thickness), at(shown, high), 'right', 2, { datum: true }),
  ];
}

function faces(x: number, thickness: number): Shape[] {
  return [
    label(say('drawing.front'), at(x, thickness * 1.16), 'face', 'small', 'middle'),
    label(say('drawing.back'), at(x, -thickness * 0.16), 'face', 'small', 'middle'),
  ];
}
