import type { Units } from '#core/length/units.ts';

/** The worked example with a mid rail, in inches and in millimetres: each kind of stage once, and a panel under a foot. */
const DOORS: Readonly<Record<Units, object>> = {
  in: {
    thickness: '7/8',
    topRail: { width: '2' },
    bead: '1/4',
    groove: { width: '1/4', depth: '3/8' },
    tenon: { length: '1 1/4', outerSetback: '3/8', innerSetback: '1/4' },
    panel: { thickness: '1/2' },
    arch: { rise: '1 3/4', flat: '3/4' },
    midRails: [{ width: '3', centre: '12' }],
    opening: { width: '14 3/4', height: '42 1/2' },
  },
  mm: {
    topRail: { width: '50' },
    panel: { thickness: '12' },
    arch: { rise: '45', flat: '20' },
    midRails: [{ width: '75', centre: '300' }],
    opening: { width: '375', height: '1080' },
  },
};

/** A job of one door that has every kind of stage: notches for its mid rail, the rip for its ends. */
export function everyStageJob(units: Units): unknown {
  return {
    format: 1,
    job: `Net loft ${units}`,
    units,
    ways: { strip: 'rip' },
    doors: [{ mark: 'NET', ...DOORS[units] }],
  };
}
