import type { Tree } from '#core/fields/read-shape.ts';
import type { Ways } from '#core/job/ways.ts';
import type { Units } from '#core/length/units.ts';

const INCH: Tree = {
  oversize: { width: '0', height: '0' },
  reveal: '1/16',
  thickness: '3/4',
  stile: { width: '2 1/4' },
  bottomRail: { width: '2 3/4' },
  topRail: { width: '2 1/4' },
  bead: '3/16',
  hinge: 'left',
  groove: { width: '1/4', depth: '1/4' },
  tenon: { length: '1', outerSetback: '1/4', innerSetback: '1/4', haunchClearance: '0' },
  mortise: { clearance: '1/16', endPlay: '1/32' },
  horn: '1/2',
  panel: { thickness: '3/8', clearance: '1/16' },
  arch: null,
  midRails: [],
};

const METRIC: Tree = {
  oversize: { width: '0', height: '0' },
  reveal: '1.5',
  thickness: '19',
  stile: { width: '57' },
  bottomRail: { width: '70' },
  topRail: { width: '57' },
  bead: '5',
  hinge: 'left',
  groove: { width: '6', depth: '7' },
  tenon: { length: '25', outerSetback: '6', innerSetback: '6', haunchClearance: '0' },
  mortise: { clearance: '1.5', endPlay: '0.8' },
  horn: '12',
  panel: { thickness: '10', clearance: '1.5' },
  arch: null,
  midRails: [],
};

/**
 * What a job file left out was, up to version 0.1.0, which kept files as they were sent. It is history: it never changes,
 * whatever is built in today. A haunch went to the groove's floor then.
 */
export function firstFields(units: Units): Tree {
  return units === 'in' ? INCH : METRIC;
}

/** The ways of every shop up to version 0.3.0. It is history: it never changes, whatever is built in today. */
export const FIRST_WAYS: Ways = { strip: 'rip', groove: 'saw' };
