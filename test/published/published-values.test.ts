import { Mod37_36 } from '@konfirm/iso7064';
import { expect, test } from 'vitest';
import { irrationalArc } from '#core/joint/arc-length.ts';
import { deriveJoint } from '#core/joint/derive.ts';
import { readJob } from '#core/job/read-job.ts';
import { length, type Length } from '#core/length/length.ts';
import { printLength } from '#core/length/print-length.ts';
import { showOther, shownText } from '#core/length/reading.ts';
import { specAsCut } from '#core/measured/apply-measured.ts';
import { NOTHING_MEASURED } from '#core/measured/measured.ts';
import { changeAcross, decimalLength } from '#core/movement/change.ts';
import { equilibriumMoisture } from '#core/movement/equilibrium.ts';
import { findSpecies } from '#core/movement/find-species.ts';
import { openingOutline } from '#core/outline/opening-outline.ts';
import { perimeter, signedArea } from '#core/outline/outline-area.ts';
import { CHANGE_COEFFICIENTS } from '#core/movement/species.ts';

test('Wood Handbook, FPL-GTR-190 (2010), example to eq. 13-2 (looked up; C_T from memory): white fir 9.15 in wide from 8 to 11 % grows 0.067 in', () => {
  const change = changeAcross(decimalLength(9.15), 'white fir', 'flat', decimalLength(3));
  expect(change.valueOf()).toBeCloseTo(0.067, 3);
  const metric = changeAcross(length(232), 'white fir', 'flat', decimalLength(3));
  expect(metric.valueOf()).toBeCloseTo(1.7, 1);
});

test('Wood Handbook, FPL-GTR-190 (2010), eq. 13-2 (C_R looked up, the change reckoned by the rule): quartersawn, the same white fir moves less than half as much', () => {
  const quarter = changeAcross(decimalLength(9.15), 'white fir', 'quarter', decimalLength(3));
  expect(quarter.valueOf()).toBeCloseTo(9.15 * 0.00112 * 3, 9);
});

/** Table 13-5, species with C_R and C_T for 1 % of moisture. */
const TABLE_13_5: readonly (readonly [string, string, string])[] = [
  ['alder, red', '0.00151', '0.00256'],
  ['ash, black', '0.00172', '0.00274'],
  ['ash, white', '0.00169', '0.00274'],
  ['basswood, American', '0.00230', '0.00330'],
  ['beech, American', '0.00190', '0.00431'],
  ['birch, paper', '0.00219', '0.00304'],
  ['birch, yellow', '0.00256', '0.00338'],
  ['butternut', '0.00116', '0.00223'],
  ['cherry, black', '0.00126', '0.00248'],
  ['chestnut, American', '0.00116', '0.00234'],
  ['elm, American', '0.00144', '0.00338'],
  ['hackberry', '0.00165', '0.00315'],
  ['hickory, pecan', '0.00169', '0.00315'],
  ['locust, black', '0.00158', '0.00252'],
  ['maple, bigleaf', '0.00126', '0.00248'],
  ['maple, red', '0.00137', '0.00289'],
  ['maple, sugar', '0.00165', '0.00353'],
  ['red oak, commercial', '0.00158', '0.00369'],
  ['sassafras', '0.00137', '0.00216'],
  ['sweetgum', '0.00183', '0.00365'],
  ['sycamore, American', '0.00172', '0.00296'],
  ['tupelo, black', '0.00176', '0.00308'],
  ['walnut, black', '0.00190', '0.00274'],
  ['white oak, commercial', '0.00180', '0.00365'],
];

test.each(TABLE_13_5)(
  'Wood Handbook, FPL-GTR-190 (2010), table 13-5 (looked up): %s changes %s radially and %s tangentially',
  (species, radial, tangential) => {
    expect(Object.entries(CHANGE_COEFFICIENTS)).toContainEqual([species, { radial, tangential }]);
  },
);

test('no species is listed beside table 13-5 (looked up) but the white fir of the worked example', () => {
  const listed = new Set([...TABLE_13_5.map(([species]) => species), 'fir, white']);
  expect(Object.keys(CHANGE_COEFFICIENTS).filter((species) => !listed.has(species))).toEqual([]);
  expect(Object.keys(CHANGE_COEFFICIENTS)).toHaveLength(listed.size);
  expect(CHANGE_COEFFICIENTS['fir, white'].radial).toBe('0.00112');
  expect(findSpecies('black cherry')).toBe('cherry, black');
  expect(findSpecies('oak')).toBeNull();
});

test.each([
  [0.3, 6.2],
  [0.5, 9.2],
  [0.65, 12.0],
  [0.8, 16.0],
])(
  'Wood Handbook, table 4-2 and eq. 4-5 (from memory): at 21.1 °C and humidity %f wood comes to %f percent',
  (humidity, percent) => {
    expect(Math.abs(equilibriumMoisture(21.1, humidity) - percent)).toBeLessThanOrEqual(0.1);
  },
);

test.each([
  [60, 1.0472, 0.13397, 1, 0.09059],
  [90, 1.5708, 0.29289, 1.41421, 0.2854],
  [120, 2.0944, 0.5, 1.73205, 0.61418],
])(
  'Machinery’s Handbook, segments of circles for radius 1 (from memory): %i degrees',
  (_degrees, arc, rise, chord, area) => {
    expect(irrationalArc({ radius: length(1), chord: decimalLength(chord) })).toBeCloseTo(arc, 4);
    const sight = decimalLength(chord).add(2) as Length;
    const read = readJob({
      format: 1,
      job: 'x',
      units: 'in',
      doors: [
        {
          mark: 'A',
          opening: { width: sight.add('9/2').toString(), height: '30' },
          arch: { rise: String(rise), flat: 1 },
        },
      ],
    });
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    const spec = read.value.doors[0]?.spec;
    const radius =
      spec === undefined ? undefined : deriveJoint(specAsCut(spec, NOTHING_MEASURED, null)).arc?.radius;
    expect(radius?.valueOf()).toBeCloseTo(1, 4);
    const sightLine = openingOutline(chord, 2, { chord, rise, pivot: 1 - rise });
    expect(signedArea(sightLine) - 2 * chord).toBeCloseTo(area, 4);
    expect(perimeter(sightLine) - chord - 4).toBeCloseTo(arc, 4);
  },
);

test('one inch is 25.4 mm exactly, by definition (international inch, 1959)', () => {
  expect(shownText(showOther('1', 'in'))).toBe('25.4');
  expect(shownText(showOther('127', 'mm'))).toBe('5');
});

test('ISO/IEC 7064 MOD 37,36: a check character reckoned by the rule, whose recursion is written here from memory', () => {
  const alphabet = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';
  const check = (body: string) => {
    let p = 36;
    for (const character of body) {
      const s = (p + alphabet.indexOf(character)) % 36 || 36;
      p = (s * 2) % 37;
    }
    return alphabet[(37 - p) % 36];
  };
  for (const body of ['803AX3UER', 'DWRBEP004', '000000000', 'XXXXXXXXX'])
    expect(Mod37_36.checksum(body)).toBe(check(body));
});

test('a fraction is printed in lowest terms, as a mixed number (reckoned, no source)', () => {
  expect(printLength(length(6, 8))).toBe('3/4');
  expect(printLength(length(203, 32))).toBe('6 11/32');
});
