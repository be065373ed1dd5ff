import { expect, test } from 'vitest';
import { builtInFields, completeDefaults } from '#core/job/complete-defaults.ts';
import { doorDefaults } from '#core/job/defaults.ts';
import { DOOR_FIELDS } from '#core/job/door-shape.ts';
import { readJob } from '#core/job/read-job.ts';

const below = () => ({ horn: '1/2', tenon: { length: '1', outerSetback: '1/4' }, arch: null, midRails: [] });

test('what a file names stays as it was typed and where it stood; what it does not name comes from below', () => {
  const file = {
    format: 1,
    units: 'in',
    defaults: { tenon: { length: '1-1/2' }, horn: 0.5, arch: { rise: 2 } },
    doors: [{ mark: 'A', tenon: { outerSetback: '3/8' } }],
  };
  const completed = completeDefaults(file, below);
  expect(JSON.stringify(completed)).toBe(
    JSON.stringify({
      format: 1,
      units: 'in',
      defaults: {
        tenon: { length: '1-1/2', outerSetback: '1/4' },
        horn: 0.5,
        arch: { rise: 2 },
        midRails: [],
      },
      doors: [{ mark: 'A', tenon: { outerSetback: '3/8' } }],
    }),
  );
});

test('null and lists stand whole, and a file that says nothing gets all of it', () => {
  expect(
    completeDefaults({ units: 'mm', defaults: { arch: null, midRails: [{ width: 2 }] } }, below).defaults,
  ).toEqual({ ...below(), midRails: [{ width: 2 }] });
  expect(completeDefaults({ units: 'in' }, below).defaults).toEqual(below());
});

test.each([{ units: 'cm' }, {}, { units: 'in', defaults: 'none' }, { units: 'in', defaults: null }])(
  'what is no job file is left as it is',
  (file) => {
    expect(completeDefaults(file, below)).toBe(file);
  },
);

test.each(['in', 'mm'] as const)(
  'the built-in fields in %s are all of them, and read back as they are',
  (units) => {
    const fields = builtInFields(units);
    const sparse = ['opening', 'survey'];
    expect(Object.keys(fields).sort()).toEqual(
      Object.keys(DOOR_FIELDS)
        .filter((name) => !sparse.includes(name))
        .sort(),
    );
    const door = { mark: 'A', opening: { width: 400, height: 700 } };
    const read = readJob({ format: 1, job: 'x', units, defaults: fields, doors: [door] });
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    const { opening: _opening, ...spec } = read.value.doors[0]?.spec ?? { opening: null };
    expect(spec).toEqual(doorDefaults(units));
  },
);

test('a reveal of one side is filled up by the one length below it, and one length stands for all sides', () => {
  const all = () => ({ reveal: '1/16' });
  const completed = (reveal: unknown) =>
    completeDefaults({ units: 'in', defaults: { reveal } }, all).defaults;
  expect(completed({ top: '1/8' })).toEqual({
    reveal: { top: '1/8', left: '1/16', right: '1/16', bottom: '1/16' },
  });
  expect(completed('3/32')).toEqual({ reveal: '3/32' });
  expect(builtInFields('in').reveal).toBe('1/16');
  expect(builtInFields('mm').reveal).toBe('1.5');
});
