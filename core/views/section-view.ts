import type { Path } from '../drawing/model.ts';
import type { Profile } from './profile.ts';
import { at, polygon, rectangle } from '../drawing/shapes.ts';

/** What of the section is cut already: the bead and the groove come in this order. */
export interface SectionState {
  readonly bead: boolean;
  readonly groove: boolean;
}

/**
 * A frame member cut across: thickness along x with the front at the left, width along y with the sight edge at the
 * top. The bead is a quarter round b by b, sunk below the front by the fillet.
 */
export function memberSection(profile: Profile, state: SectionState): Path {
  const { width, thickness, bead, fillet, wall, grooveWidth, grooveDepth } = profile;
  const top =
    state.groove && grooveDepth > 0
      ? [
          at(thickness, width),
          at(wall + grooveWidth, width),
          at(wall + grooveWidth, width - grooveDepth),
          at(wall, width - grooveDepth),
          at(wall, width),
        ]
      : [at(thickness, width)];
  const corners = [at(0, 0), at(thickness, 0), ...top];
  if (!state.bead || bead === 0) return polygon([...corners, at(0, width)]);
  const path = polygon([...corners, at(fillet + bead, width)]);
  return {
    start: path.start,
    runs: [
      ...path.runs,
      {
        kind: 'arc',
        to: at(fillet, width - bead),
        centre: at(fillet + bead, width - bead),
        clockwise: false,
      },
      { kind: 'line', to: at(0, width - bead) },
    ],
  };
}

/** The corner of the section that the bead cutter takes off, between square stock and finished bead. */
export function beadWaste(profile: Profile): Path {
  const { width, bead, fillet } = profile;
  return {
    start: at(0, width),
    runs: [
      { kind: 'line', to: at(0, width - bead) },
      { kind: 'line', to: at(fillet, width - bead) },
      { kind: 'arc', to: at(fillet + bead, width), centre: at(fillet + bead, width - bead), clockwise: true },
    ],
  };
}

/** What the groove takes out of the section, in the section’s own frame. */
export function grooveWaste(profile: Profile): Path {
  const { width, wall, grooveWidth, grooveDepth } = profile;
  return rectangle(wall, width - grooveDepth, wall + grooveWidth, width);
}
