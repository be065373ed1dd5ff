import type { Shape } from '../fields/shape.ts';

const notNegative: Shape = { kind: 'length' };
const positive: Shape = { kind: 'length', positive: true };
const signed: Shape = { kind: 'length', signed: true };

/** Every door field of the job file, by name. A group that is `whole` replaces, the others are merged field by field. */
export const DOOR_FIELDS = {
  opening: { kind: 'group', fields: { width: positive, height: positive } },
  oversize: { kind: 'group', fields: { width: signed, height: signed } },
  reveal: notNegative,
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
      species: { kind: 'species' },
      sawn: { kind: 'word', of: ['flat', 'quarter'] },
    },
  },
  arch: {
    kind: 'group',
    orNull: true,
    fields: { kind: { kind: 'word', of: ['circular'] }, rise: notNegative, flat: notNegative },
  },
  midRails: {
    kind: 'list',
    most: 20,
    of: { kind: 'group', whole: true, fields: { width: positive, centre: notNegative } },
  },
  survey: {
    kind: 'group',
    fields: {
      widthBottom: positive,
      widthTop: positive,
      heightLeft: positive,
      heightRight: positive,
      diagonalUp: positive,
      diagonalDown: positive,
    },
  },
} as const satisfies Readonly<Record<string, Shape>>;
