/**
 * Dimensional change coefficients for 1 % change of moisture content, radial (quartersawn) and tangential (flatsawn).
 * Source: Wood Handbook, USDA Forest Products Laboratory, FPL-GTR-190 (2010), table 13-5; fir, white: C_T from memory.
 */
export const CHANGE_COEFFICIENTS = {
  'alder, red': { radial: '0.00151', tangential: '0.00256' },
  'ash, black': { radial: '0.00172', tangential: '0.00274' },
  'ash, white': { radial: '0.00169', tangential: '0.00274' },
  'basswood, American': { radial: '0.00230', tangential: '0.00330' },
  'beech, American': { radial: '0.00190', tangential: '0.00431' },
  'birch, paper': { radial: '0.00219', tangential: '0.00304' },
  'birch, yellow': { radial: '0.00256', tangential: '0.00338' },
  butternut: { radial: '0.00116', tangential: '0.00223' },
  'cherry, black': { radial: '0.00126', tangential: '0.00248' },
  'chestnut, American': { radial: '0.00116', tangential: '0.00234' },
  'elm, American': { radial: '0.00144', tangential: '0.00338' },
  'fir, white': { radial: '0.00112', tangential: '0.00245' },
  hackberry: { radial: '0.00165', tangential: '0.00315' },
  'hickory, pecan': { radial: '0.00169', tangential: '0.00315' },
  'locust, black': { radial: '0.00158', tangential: '0.00252' },
  'maple, bigleaf': { radial: '0.00126', tangential: '0.00248' },
  'maple, red': { radial: '0.00137', tangential: '0.00289' },
  'maple, sugar': { radial: '0.00165', tangential: '0.00353' },
  'red oak, commercial': { radial: '0.00158', tangential: '0.00369' },
  'white oak, commercial': { radial: '0.00180', tangential: '0.00365' },
  sassafras: { radial: '0.00137', tangential: '0.00216' },
  sweetgum: { radial: '0.00183', tangential: '0.00365' },
  'sycamore, American': { radial: '0.00172', tangential: '0.00296' },
  'tupelo, black': { radial: '0.00176', tangential: '0.00308' },
  'walnut, black': { radial: '0.00190', tangential: '0.00274' },
} as const;

/** A species of the table, by the name that it has there. */
export type Species = keyof typeof CHANGE_COEFFICIENTS;
/** Every species of the table. */
export const SPECIES = Object.keys(CHANGE_COEFFICIENTS) as readonly Species[];
