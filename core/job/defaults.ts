import { length, ZERO } from '../length/length.ts';
import type { Units } from '../length/units.ts';
import { eachSide } from '../plan/each-side.ts';
import type { DoorSpec } from './job.ts';

/** The built-in door: every field that a job file may leave out. The opening it must bring. */
export type DoorDefaults = Omit<DoorSpec, 'opening' | 'survey'>;

const INCH: DoorDefaults = {
  oversize: { width: ZERO, height: ZERO },
  reveal: eachSide(() => length(1, 16)),
  thickness: length(3, 4),
  stile: { width: length(9, 4) },
  bottomRail: { width: length(11, 4) },
  topRail: { width: length(9, 4) },
  bead: length(3, 16),
  hinge: 'left',
  groove: { width: length(1, 4), depth: length(3, 8) },
  tenon: {
    length: length(5, 4),
    outerSetback: length(3, 8),
    innerSetback: length(1, 4),
    haunchClearance: length(1, 32),
  },
  mortise: { clearance: length(1, 16), endPlay: length(1, 32) },
  horn: length(1, 2),
  panel: { thickness: length(1, 2), clearance: length(1, 16) },
  arch: null,
  midRails: [],
};

const METRIC: DoorDefaults = {
  oversize: { width: ZERO, height: ZERO },
  reveal: eachSide(() => length(3, 2)),
  thickness: length(19),
  stile: { width: length(57) },
  bottomRail: { width: length(70) },
  topRail: { width: length(57) },
  bead: length(5),
  hinge: 'left',
  groove: { width: length(6), depth: length(10) },
  tenon: {
    length: length(32),
    outerSetback: length(10),
    innerSetback: length(6),
    haunchClearance: length(4, 5),
  },
  mortise: { clearance: length(3, 2), endPlay: length(4, 5) },
  horn: length(12),
  panel: { thickness: length(12), clearance: length(3, 2) },
  arch: null,
  midRails: [],
};

/** The built-in defaults for a job in these units. Common practice, no source. */
export function doorDefaults(units: Units): DoorDefaults {
  return units === 'in' ? INCH : METRIC;
}
