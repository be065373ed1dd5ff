import type { Fields } from '../fields/shape.ts';

const notNegative = { kind: 'length' } as const;
const positive = { kind: 'length', positive: true } as const;
const signed = { kind: 'length', signed: true } as const;

/** Every door field of the job file, by name. A group that is `whole` replaces, the others are merged field by field. */
export const DOOR_FIELDS = {
  opening: { kind: 'group', fields: { width: positive, height: positive } },
  oversize: { kind: 'group', fields: { width: signed, height: signed } },
  /** The gap between the finished door and its opening: one length all round, or each side's own. */
  reveal: { kind: 'sides' },
  thickness: positive,
  stile: { kind: 'group', fields: { width: positive } },
  bottomRail: { kind: 'group', fields: { width: positive } },
  topRail: { kind: 'group', fields: { width: positive } },
  bead: notNegative,
  hinge: { kind: 'word', of: ['left', 'right'] },
  groove: { kind: 'group', fields: { width: positive, depth: positive } },
  tenon: {
    kind: 'group',
    fields: {
      length: positive,
      outerSetback: notNegative,
      innerSetback: notNegative,
      /** How far the haunch stays short of the groove's floor, where the groove is deeper than the bead. */
      haunchClearance: notNegative,
    },
  },
  mortise: { kind: 'group', fields: { clearance: notNegative, endPlay: notNegative } },
  horn: notNegative,
  panel: {
    kind: 'group',
    fields: {
      thickness: positive,
      clearance: notNegative,
      species: { kind: 'species', optional: true },
      sawn: { kind: 'word', of: ['flat', 'quarter'], optional: true },
    },
  },
  /** An arched top rail: the arc's rise, and the straight flat at each side of it. */
  arch: {
    kind: 'group',
    orNull: true,
    fields: { kind: { kind: 'word', of: ['circular'] }, rise: notNegative, flat: notNegative },
  },
  /** Each with its width, and the height of its center line above the bottom of the door as built. */
  midRails: {
    kind: 'list',
    most: 20,
    of: { kind: 'group', whole: true, fields: { width: positive, centre: notNegative } },
  },
  /** The opening as measured: two widths, two heights, and the diagonals from bottom left up (A to C) and from top left down (B to D). */
  survey: {
    kind: 'group',
    optional: true,
    fields: {
      widthBottom: positive,
      widthTop: positive,
      heightLeft: positive,
      heightRight: positive,
      diagonalUp: positive,
      diagonalDown: positive,
    },
  },
} as const satisfies Fields;
