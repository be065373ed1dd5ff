import { expect, test } from 'vitest';
import { readJob } from '#core/job/read-job.ts';
import { printLength } from '#core/length/print-length.ts';

const door = { mark: 'A', opening: { width: '14 3/4', height: '22 1/2' } };
const job = (more: object = {}) => ({ format: 1, job: 'Quay Street', units: 'in', doors: [door], ...more });

function faultsOf(input: unknown): string[] {
  const read = readJob(input);
  return read.ok ? [] : read.faults.map(({ path, code }) => `${path} ${code}`);
}

test('a door stands over the job’s defaults, and these over the built-in ones, field by field', () => {
  const read = readJob(
    job({
      defaults: { groove: { depth: '7/16' }, horn: 1 },
      doors: [{ ...door, groove: { width: '5/16' } }],
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const spec = read.value.doors[0]?.spec;
  expect(spec && [spec.groove.width, spec.groove.depth, spec.horn, spec.bead].map(printLength)).toEqual([
    '5/16',
    '7/16',
    '1',
    '3/16',
  ]);
});

test('null and lists replace whole', () => {
  const read = readJob(
    job({
      defaults: { arch: { rise: 1, flat: 1 }, midRails: [{ width: 2, centre: 11 }] },
      doors: [{ ...door, arch: null, midRails: [] }],
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  expect(read.value.doors[0]?.spec.arch).toBeNull();
  expect(read.value.doors[0]?.spec.midRails).toEqual([]);
});

test('a door’s arch takes from the job’s defaults what it does not say itself', () => {
  const read = readJob(
    job({ defaults: { arch: { rise: 1, flat: '3/4' } }, doors: [{ ...door, arch: { rise: 2 } }] }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const arch = read.value.doors[0]?.spec.arch;
  expect(arch && [arch.rise, arch.flat].map(printLength)).toEqual(['2', '3/4']);
  expect(faultsOf(job({ doors: [{ ...door, arch: { rise: 2 } }] }))).toEqual(['doors[0].arch.flat required']);
});

test.each<[string, unknown, string]>([
  ['no object', 'x', '(file) type'],
  ['another format', job({ format: 2 }), 'format format'],
  ['other units', job({ units: 'cm' }), 'units word'],
  ['an unknown field', job({ colour: 'red' }), 'colour unknown-field'],
  ['an unknown door field', job({ doors: [{ ...door, knob: 1 }] }), 'doors[0].knob unknown-field'],
  [
    'a prototype key',
    JSON.parse(
      '{"format":1,"job":"x","units":"in","__proto__":{"a":1},"doors":[{"mark":"A","opening":{"width":14,"height":22}}]}',
    ),
    '__proto__ unknown-field',
  ],
  ['a mark twice', job({ doors: [door, door] }), 'doors[1].mark mark-twice'],
  ['a long mark', job({ doors: [{ ...door, mark: 'ABCDEFGHIJKLM' }] }), 'doors[0].mark text-length'],
  ['half a character', job({ job: 'a\ud800' }), 'job text-control'],
  ['a name of dots alone', job({ job: '..' }), 'job job-dots'],
  ['a control character', job({ job: 'a\u0007b' }), 'job text-control'],
  ['no opening', job({ doors: [{ mark: 'A' }] }), 'doors[0].opening.width required'],
  ['a negative length', job({ doors: [{ ...door, horn: '-3' }] }), 'doors[0].horn negative'],
  ['a number over 0', job({ doors: [{ ...door, horn: '1/0' }] }), 'doors[0].horn length-denominator'],
  ['an endless number', job({ doors: [{ ...door, horn: 1e400 }] }), 'doors[0].horn length-form'],
  ['a day that is none', job({ due: '2026-02-30' }), 'due date'],
  ['too many doors', job({ doors: [{ ...door, quantity: 10_001 }] }), 'doors[0].quantity quantity'],
  ['too many entries', job({ doors: Array.from({ length: 10_001 }, () => door) }), 'doors too-many'],
  [
    'a strange species',
    job({ doors: [{ ...door, panel: { species: 'plastic' } }] }),
    'doors[0].panel.species species',
  ],
])('%s is a fault with its place', (_what, input, fault) => {
  expect(faultsOf(input)).toContain(fault);
});

test('nesting without end is refused at once', () => {
  let deep: unknown = 1;
  for (let k = 0; k < 100_000; k += 1) deep = [deep];
  expect(faultsOf(job({ doors: [{ ...door, stile: deep }] }))).toContain('doors[0].stile type');
});

test('at most a hundred faults are listed, and the rest counted', () => {
  const doors = Array.from({ length: 500 }, (_, k) => ({
    mark: `D${k}`,
    opening: { width: 'x', height: 'y' },
  }));
  const read = readJob(job({ doors }));
  expect(read.ok ? 0 : read.faults.length).toBe(101);
});
