import type { Drawing } from '#core/drawing/model.ts';
import { drawn, profileOf, stageOf } from '#core/drawing/plan-number.ts';
import { sectionShapes } from '#core/drawing/section-view.ts';
import { at, dimension } from '#core/drawing/shapes.ts';
import type { PlanPart, Units } from '#core/plan/plan.ts';
import { say } from '#core/words/say.ts';

/** How much of a member is drawn from its sight edge: as many times the groove's depth. */
const SHOWN = 3;

/** A stile cut across near its sight edge, bead and groove made, each with its size: front at the left, sight edge above. */
export function sectionDrawing(stile: PlanPart, units: Units): Drawing {
  const whole = profileOf(stile);
  const { thickness, bead, fillet, wall, grooveWidth, grooveDepth } = whole;
  const width = Math.min(whole.width, Math.max(SHOWN * Math.max(grooveDepth, bead), thickness));
  const near: PlanPart = { ...stile, width: String(width) };
  const [beading, groove] = [stageOf(stile, 'bead')?.settings, stageOf(stile, 'groove')?.settings];
  return {
    title: say('paper.section'),
    units,
    shapes: [
      ...sectionShapes(near, { bead: true, groove: true }),
      ...dimension('thickness', stile.thickness, at(0, 0), at(thickness, 0), 'below', 1),
      ...dimension('wall', groove?.fence, at(wall + grooveWidth, width), at(thickness, width), 'above', 2),
      ...dimension('grooveWidth', groove?.width, at(wall, width), at(wall + grooveWidth, width), 'above', 1),
      ...dimension(
        'depth',
        groove?.depth,
        at(thickness, width - grooveDepth),
        at(thickness, width),
        'right',
        1,
      ),
      ...(drawn(beading?.bead) > 0
        ? [
            ...dimension('bead', beading?.bead, at(0, width - bead), at(0, width), 'left', 1),
            ...dimension('fillet', beading?.fillet, at(0, width), at(fillet, width), 'above', 3),
          ]
        : []),
    ],
  };
}
