import type { Drawing, Shape } from '../drawing/model.ts';
import { area, at, dimension, label, polygon, rectangle, stroke } from '../drawing/shapes.ts';
import type { Units } from '../length/units.ts';
import { moved } from '../outline/moved.ts';
import { partsOf } from '../plan/parts-of.ts';
import type { PlanDoor, PlanPart } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { shoulderOf } from './rail-blank.ts';
import { memberSection } from './section-view.ts';

/** The two sections that show how a door goes together, each a drawing of its own. */
export function jointSections(door: PlanDoor, units: Units): Drawing[] {
  const { stiles, rails, panels } = partsOf(door);
  const [stile, rail, panel] = [stiles.left, rails.bottom, panels[0]];
  return [
    {
      title: say('drawing.section-panel', { door: door.door }),
      units,
      shapes: panel === undefined ? [] : panelSection(door, stile, panel),
    },
    { title: say('drawing.section-tenon', { door: door.door }), units, shapes: tenonSection(stile, rail) },
  ];
}

/**
 * Left stile and panel cut across, seen from above, the front at the top: x from the stile's outer edge, y from its
 * back. Bead, fillet and groove are the stile's, the tongue the panel's.
 */
function panelSection(door: PlanDoor, stile: PlanPart, panel: PlanPart): Shape[] {
  const profile = profileOf(stile);
  const { width, thickness, bead: b, fillet, wall, grooveWidth, grooveDepth } = profile;
  const [bead, groove] = [stageOf(stile, 'bead')?.settings, stageOf(stile, 'groove')?.settings];
  const hold = (drawn(panel.width) - drawn(door.values.sightWidth)) / 2;
  const shown = width * 2;
  const member = moved(memberSection(profile, { bead: true, groove: true }), ({ x, y }) =>
    at(y, thickness - x),
  );
  return [
    area(member, 'section', 'section'),
    area(panelEdge(panel, width - hold, thickness - wall, shown), 'panel-section', 'section'),
    ...faces(width * 0.3, thickness),
    dimension('width', stile.width, at(0, 0), at(width, 0), 'below', 2),
    ...where(groove, ({ depth }) =>
      dimension('depth', depth, at(width, wall), at(width - grooveDepth, wall), 'below', 1, DATUM),
    ),
    ...where(bead, ({ bead: size }) =>
      dimension('bead', size, at(width, thickness - fillet), at(width - b, thickness), 'above', 1, DATUM),
    ),
    dimension('thickness', stile.thickness, at(0, 0), at(0, thickness), 'left', 2),
    ...where(groove, (cut) =>
      dimension('grooveWidth', cut.width, at(0, wall), at(0, wall + grooveWidth), 'left', 1),
    ),
    ...where(bead, (stuck) =>
      dimension(
        'fillet',
        stuck.fillet,
        at(shown, thickness),
        at(shown, thickness - fillet),
        'right',
        1,
        DATUM,
      ),
    ),
    ...where(groove, (cut) =>
      dimension('wall', cut.fence, at(shown, thickness), at(shown, thickness - wall), 'right', 2, DATUM),
    ),
    dimension(
      'panelThickness',
      panel.thickness,
      at(shown, thickness - wall),
      at(shown, thickness - wall - drawn(panel.thickness)),
      'right',
      3,
    ),
  ];
}

/** What a stage is drawn by, where there is such a stage. */
function where<T>(settings: T | undefined, draw: (settings: T) => Shape): Shape[] {
  return settings === undefined ? [] : [draw(settings)];
}

const DATUM = { datum: true } as const;

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
  const mortise = stageOf(stile, 'mortise')?.settings;
  const tenon = shoulderOf(rail);
  const depth = mortise === undefined ? 0 : drawn(mortise.depthFromEdge);
  const cheek = stageOf(rail, 'cheek')?.settings;
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
    ...where(mortise, ({ depthFromEdge }) =>
      dimension('depthFromEdge', depthFromEdge, at(width, 0), at(width - depth, low), 'below', 2, DATUM),
    ),
    ...where(stageOf(rail, 'shoulder')?.settings, ({ stop }) =>
      dimension('tenonLength', stop, at(line, 0), at(line - tenon, low), 'below', 1, DATUM),
    ),
    dimension('width', stile.width, at(0, thickness), at(width, thickness), 'above', 2),
    ...where(stageOf(stile, 'bead')?.settings, ({ bead: size }) =>
      dimension('bead', size, at(width, thickness), at(line, thickness), 'above', 1, DATUM),
    ),
    dimension('thickness', stile.thickness, at(0, 0), at(0, thickness), 'left', 1),
    ...where(cheek, (cut) =>
      dimension('tenonThickness', cut.thickness, at(shown, low), at(shown, high), 'right', 1),
    ),
    ...where(cheek, ({ height }) =>
      dimension('wall', height, at(shown, thickness), at(shown, high), 'right', 2, DATUM),
    ),
  ];
}

function faces(x: number, thickness: number): Shape[] {
  return [
    label(say('drawing.front'), at(x, thickness * 1.16), 'face', 'small', 'middle'),
    label(say('drawing.back'), at(x, -thickness * 0.16), 'face', 'small', 'middle'),
  ];
}
