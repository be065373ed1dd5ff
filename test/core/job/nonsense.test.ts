import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { speakFaults } from '#core/telling/speak-faults.ts';
import { samples } from '../../samples.ts';

// Whatever comes in, a plan or plain faults come out, in bounded time: each test is held to the runner's own limit.

const door = { mark: 'A', opening: { width: '16', height: '30' } };
const job = { format: 1, job: 'x', units: 'in', doors: [door] };

/** Looks at what came of an input: a plan without a figure that is none, or faults that say where, what and why. */
function answered(input: unknown): readonly string[] {
  const planned = planFile(input);
  if (planned.ok) {
    const text = JSON.stringify(planned.value);
    expect(text).not.toMatch(/NaN|Infinity|undefined|\[object/);
    return [];
  }
  expect(planned.faults.length).toBeGreaterThan(0);
  for (const { path, code, message } of speakFaults(planned.faults, 'en')) {
    expect(path).not.toBe('');
    expect(code).toMatch(/^[a-z][a-z-]*$/);
    expect(message.length).toBeGreaterThan(5);
    expect(message.length + path.length).toBeLessThan(4000);
    // What was given is quoted last, and may say anything.
    expect(message.replace(/got .*$/su, '')).not.toMatch(/NaN|undefined|\[object|\bat .*:\d+:\d+|\{\w+\}/);
  }
  return planned.faults.map(({ path, code }) => `${path} ${code}`);
}

const deep = (levels: number): unknown => {
  let value: unknown = 1;
  for (let k = 0; k < levels; k += 1) value = k % 2 === 0 ? [value] : { opening: value };
  return value;
};

test.each<[string, unknown, string]>([
  ['1e400 as a number', JSON.parse('1e400'), 'length-form'],
  ['1e400 as a text', '1e400', 'length-form'],
  ['1/0', '1/0', 'length-denominator'],
  ['-3', '-3', 'negative'],
  ['-3 as a number', -3, 'negative'],
  ['nothing', '', 'length-form'],
  ['a space', ' ', 'length-form'],
  ['two points', '1.2.3', 'length-form'],
  ['a hundred digits', '9'.repeat(100), 'length-digits'],
  ['a hundred digits below', `1/${'9'.repeat(90)}`, 'length-digits'],
  ['a recurring decimal', '0.(3)', 'length-form'],
  ['hexadecimal', '0x10', 'length-form'],
  ['full-width digits', '１６', 'length-form'],
  ['a megabyte of digits', '9'.repeat(1 << 20), 'length-digits'],
  ['a megabyte of spaces', ' '.repeat(1 << 20), 'length-digits'],
  ['a megabyte of fractions', '1/'.repeat(1 << 19), 'length-digits'],
  ['deep nesting', deep(50_000), 'length-type'],
  ['true', true, 'length-type'],
  ['null', null, 'length-type'],
  ['a list', ['16'], 'length-type'],
  ['a moon', '500000', 'length-size'],
])('%s as a length is refused by name', (_what, value, code) => {
  expect(answered({ ...job, doors: [{ ...door, opening: { width: value, height: '30' } }] })).toContain(
    `doors[0].opening.width ${code}`,
  );
});

test.each<[string, unknown]>([
  ['nothing', undefined],
  ['null', null],
  ['a number', 7],
  ['a list', [job]],
  ['a text', JSON.stringify(job)],
  ['a deep nest', deep(50_000)],
  ['doors that are a text', { ...job, doors: 'A' }],
  ['doors that are a deep nest', { ...job, doors: [deep(50_000)] }],
  ['no doors', { ...job, doors: [] }],
  ['a megabyte of a name', { ...job, job: 'x'.repeat(1 << 20) }],
  ['a megabyte of a field’s name', { ...job, ['x'.repeat(1 << 20)]: 1 }],
  [
    'ten thousand unknown fields',
    { ...job, ...Object.fromEntries(Array.from({ length: 10_000 }, (_, k) => [`f${k}`, k])) },
  ],
  ['10 001 doors', { ...job, doors: [{ ...door, quantity: 10_001 }] }],
  [
    '10 001 entries',
    { ...job, doors: Array.from({ length: 10_001 }, (_, k) => ({ ...door, mark: `D${k}` })) },
  ],
  [
    '10 001 doors in two entries',
    {
      ...job,
      doors: [
        { ...door, quantity: 10_000 },
        { ...door, mark: 'B' },
      ],
    },
  ],
  ['half a door', { ...job, doors: [{ ...door, quantity: 0.5 }] }],
  [
    'a million mid rails',
    { ...job, doors: [{ ...door, midRails: Array.from({ length: 1_000_000 }, () => 1) }] },
  ],
  ['constructor as a field', { ...job, doors: [{ ...door, constructor: { prototype: 1 } }] }],
])('%s is refused', (_what, input) => {
  expect(answered(input).length).toBeGreaterThan(0);
});

test.each(['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', 'valueOf'])(
  'the field %s is unknown at every level, and changes no other object',
  (name) => {
    const laced = JSON.parse(
      JSON.stringify({ ...job, defaults: { stile: {} }, doors: [{ ...door, stile: {} }] })
        .replaceAll('{', `{"${name}":{"polluted":"yes"},`)
        .replaceAll(',}', '}'),
    ) as unknown;
    const faults = answered(laced);
    for (const where of ['', 'defaults.', 'doors[0].', 'doors[0].opening.', 'doors[0].stile.'])
      expect(faults).toContain(`${where}${name} unknown-field`);
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  },
);

test('any JSON at all is answered with a plan or with faults', () => {
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 6 }), (input) => {
      answered(input);
    }),
    { numRuns: samples(100, 2000) },
  );
});

const length = fc.oneof(
  fc.integer({ min: -100, max: 100_000 }).map((n) => `${n}/16`),
  fc.double({ noNaN: true }),
  fc.string({ maxLength: 12 }),
  fc.constantFrom(
    '0',
    '1/64',
    '1/99999999999999999999',
    '12000',
    '0.00000000000000000001',
    3,
    1e-7,
    5e-324,
    1e21,
  ),
  fc.jsonValue({ maxDepth: 2 }),
);
const group = (...names: string[]) =>
  fc.oneof(
    {
      weight: 8,
      arbitrary: fc.record(Object.fromEntries(names.map((name) => [name, length])), { requiredKeys: [] }),
    },
    { weight: 1, arbitrary: fc.jsonValue() },
  );

const strangeDoor = fc.record(
  {
    opening: group('width', 'height'),
    oversize: group('width', 'height'),
    reveal: fc.oneof(length, group('left', 'right', 'bottom', 'top')),
    thickness: length,
    stile: group('width'),
    bottomRail: group('width'),
    topRail: group('width'),
    bead: length,
    groove: group('width', 'depth'),
    tenon: group('length', 'outerSetback', 'innerSetback', 'haunchClearance'),
    mortise: group('clearance', 'endPlay'),
    horn: length,
    panel: group('thickness', 'clearance', 'species', 'sawn'),
    arch: fc.option(group('rise', 'flat'), { nil: null }),
    midRails: fc.array(group('width', 'centre'), { maxLength: 4 }),
    survey: group('widthBottom', 'widthTop', 'heightLeft', 'heightRight', 'diagonalUp', 'diagonalDown'),
  },
  { requiredKeys: [] },
);

test('a door with strange values in any of its fields is answered with a plan or with faults', () => {
  fc.assert(
    fc.property(strangeDoor, fc.constantFrom('in', 'mm'), (fields, units) => {
      answered({ ...job, units, doors: [{ ...door, ...fields }] });
    }),
    { numRuns: samples(120, 4000) },
  );
});

/** Lengths that are well formed but of any size, so that the arithmetic itself is reached. */
const sized = fc
  .integer({ min: 0, max: 6000 })
  .chain((n) => fc.constantFrom(1, 3, 7, 16, 64).map((d) => `${n}/${d}`));
const sizedGroup = (...names: string[]) => fc.record(Object.fromEntries(names.map((name) => [name, sized])));

test('a door with sizes of any proportion is answered with a plan or with faults', () => {
  const anyDoor = fc.record(
    {
      opening: sizedGroup('width', 'height'),
      stile: sizedGroup('width'),
      thickness: sized,
      bead: sized,
      groove: sizedGroup('width', 'depth'),
      tenon: sizedGroup('length', 'outerSetback', 'innerSetback', 'haunchClearance'),
      horn: sized,
      reveal: fc.oneof(sized, sizedGroup('left', 'right', 'bottom', 'top')),
      arch: sizedGroup('rise', 'flat'),
      midRails: fc.array(sizedGroup('width', 'centre'), { maxLength: 3 }),
      survey: sizedGroup(
        'widthBottom',
        'widthTop',
        'heightLeft',
        'heightRight',
        'diagonalUp',
        'diagonalDown',
      ),
    },
    { requiredKeys: [] },
  );
  fc.assert(
    fc.property(anyDoor, (fields) => {
      answered({ ...job, doors: [{ ...door, ...fields }] });
    }),
    { numRuns: samples(120, 4000) },
  );
});
