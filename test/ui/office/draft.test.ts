// @vitest-environment node

import { expect, test } from 'vitest';
import { builtInFields, completeDefaults } from '#core/job/complete-defaults.ts';
import { readJob } from '#core/job/read-job.ts';
import { convertJob } from '#core/job/convert-units.ts';
import { planFile } from '#core/planning/plan-file.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };
import { emptyDraft, usualAt, valueAt } from '#ui/office/draft.ts';
import { draftOf, fileOf } from '#ui/office/draft-file.ts';

test('a job file read into the form and written again plans the same, mid rails and all', () => {
  const before = planFile(demo);
  const after = planFile(fileOf(draftOf(demo, demo.id, 1)));
  expect(after).toEqual(before);
});

test('a new job carries every default written out, so that no later change of the shop’s reaches it', () => {
  const draft = emptyDraft('in');
  draft.job = 'New';
  Object.assign(draft.rows[0] ?? {}, { mark: 'A', width: '16', height: '30' });
  const file = fileOf(draft);
  expect(file.defaults).toMatchObject({
    thickness: '3/4',
    groove: { width: '1/4', depth: '3/8' },
    tenon: { length: '1 1/4', outerSetback: '3/8', innerSetback: '1/4', haunchClearance: '1/32' },
    mortise: { endPlay: '1/32' },
  });
  expect(planFile(file).ok).toBe(true);
});

test.each(['Hall cupboard', 'Küche & Stube', 'job-0a1b2c3d4e', 'a/b?c#d'])(
  'a job that the hub holds as “%s” is written back without that name, which its file never had',
  (id) => {
    const { id: _own, ...unnamed } = demo;
    const file = fileOf(draftOf({ ...unnamed, job: 'Hall cupboard' }, id, 3));
    expect(file).not.toHaveProperty('id');
    expect(planFile(file).ok).toBe(true);
  },
);

test('an id that the file itself brought stays in it, whatever the hub calls the job', () => {
  expect(fileOf(draftOf(demo, 'job-0a1b2c3d4e', 2)).id).toBe(demo.id);
});

test('hinge, mid rails and species of a door are written where they are its own', () => {
  const draft = emptyDraft('in');
  draft.job = 'New';
  draft.species = 'cherry, black';
  Object.assign(draft.rows[0] ?? {}, {
    mark: 'A',
    width: '16',
    height: '30',
    hinge: 'right',
    species: 'ash, white',
    midRails: [{ key: 1, width: '3', centre: '14 1/2' }],
    ownMidRails: true,
  });
  expect(fileOf(draft)).toMatchObject({
    defaults: { panel: { species: 'cherry, black', thickness: '1/2' } },
    doors: [
      { hinge: 'right', panel: { species: 'ash, white' }, midRails: [{ width: '3', centre: '14 1/2' }] },
    ],
  });
  expect(planFile(fileOf(draft)).ok).toBe(true);
});

test('a door that its file frees from the job’s own mid rails and arch stays free of them', () => {
  const defaults = { midRails: [{ width: '3', centre: '15' }], arch: { rise: '1', flat: '3/4' } };
  const door = { mark: 'A', opening: { width: '16', height: '30' }, midRails: [], arch: null };
  const file = {
    format: 1,
    job: 'New',
    units: 'in',
    defaults,
    doors: [door, { ...door, mark: 'B', midRails: undefined }],
  };
  const before = JSON.parse(JSON.stringify(file)) as typeof file;
  const written = fileOf(draftOf(before, null, null));
  expect(written.doors).toMatchObject([{ midRails: [], arch: null }, { arch: null }]);
  expect(planFile(written)).toEqual(planFile(before));
});

test('a door’s own bead and stile width are read, written, and left out where they are the job’s', () => {
  const doors = [{ mark: 'A', opening: { width: '16', height: '30' }, bead: 0, stile: { width: '2' } }];
  const draft = draftOf({ format: 1, job: 'x', units: 'in', doors }, null, null);
  expect(draft.rows[0]).toMatchObject({ own: { bead: '0', 'stile.width': '2' }, other: {} });
  expect(fileOf(draft)).toMatchObject({ doors: [{ bead: '0', stile: { width: '2' } }] });
  Object.assign(draft.rows[0]?.own ?? {}, { bead: '', 'stile.width': ' ' });
  expect((fileOf(draft).doors as object[])[0]).not.toHaveProperty('bead');
  expect((fileOf(draft).doors as object[])[0]).not.toHaveProperty('stile');
});

test('a job as the hub keeps it, every measure written out, shows them as the whole job’s and is written back the same', () => {
  const kept = completeDefaults({ ...demo, defaults: { horn: '3/4' } }, builtInFields);
  const draft = draftOf(kept, demo.id, 1);
  expect([draft.defaults.horn, draft.defaults.thickness]).toEqual(['3/4', '3/4']);
  expect(draft.rows.map(({ own, species }) => [own.bead, own['stile.width'], species])).toEqual(
    demo.doors.map((door: object) => [valueAt(door, 'bead') ?? '', valueAt(door, 'stile.width') ?? '', '']),
  );
  const back = fileOf(draft);
  expect(back.defaults).toEqual(kept.defaults);
  expect(planFile(back)).toEqual(planFile(kept));
});

const crooked = {
  format: 1,
  job: 'Crooked hall',
  units: 'in',
  doors: [
    {
      mark: 'C1',
      quantity: 1,
      opening: { width: '16', height: '30' },
      hinge: 'right',
      oversize: { width: '1/4', height: '-1/8' },
      bottomRail: { width: '3 1/2' },
      topRail: { width: '3' },
      stile: { width: '2' },
      thickness: '7/8',
      bead: '1/8',
      horn: '1',
      reveal: { left: '1/8', top: '3/32' },
      mortise: { endPlay: '1/16' },
      survey: {
        widthBottom: '16',
        widthTop: '16 1/8',
        heightLeft: '30',
        heightRight: '30 1/16',
        diagonalUp: '34 1/8',
        diagonalDown: '34',
      },
    },
    { mark: 'C2', quantity: 2, opening: { width: '16', height: '30' }, hinge: 'left', horn: '0' },
  ],
};

test('a file with every measure that one door may have of its own, opened and saved unchanged, is the same file', () => {
  const kept = completeDefaults(crooked, builtInFields);
  const draft = draftOf(kept, null, null);
  expect(draft.rows[0]?.own).toEqual({
    'oversize.width': '1/4',
    'oversize.height': '-1/8',
    'bottomRail.width': '3 1/2',
    'topRail.width': '3',
    'stile.width': '2',
    thickness: '7/8',
    bead: '1/8',
    horn: '1',
    reveal: '',
    'reveal.left': '1/8',
    'reveal.right': '',
    'reveal.bottom': '',
    'reveal.top': '3/32',
    'survey.widthBottom': '16',
    'survey.widthTop': '16 1/8',
    'survey.heightLeft': '30',
    'survey.heightRight': '30 1/16',
    'survey.diagonalUp': '34 1/8',
    'survey.diagonalDown': '34',
  });
  expect(draft.rows[0]?.other).toEqual({ mortise: { endPlay: '1/16' } });
  expect(fileOf(draft).doors).toEqual(crooked.doors);
  expect(fileOf(draft)).toEqual(kept);
});

test('a door’s own measures and its survey go along into other units, exactly, and back', () => {
  const kept = completeDefaults(crooked, builtInFields);
  const metric = draftOf(convertJob(fileOf(draftOf(kept, null, null)), 'mm'), null, null);
  expect(metric.rows[0]?.own).toMatchObject({
    'oversize.height': '-3.175',
    thickness: '22.225',
    horn: '25.4',
    'survey.widthTop': '409.575',
  });
  expect(fileOf(draftOf(convertJob(fileOf(metric), 'in'), null, null)).doors).toEqual(crooked.doors);
});

test('what an empty field of a door’s own stands for is the job’s, a survey’s only where the job has one', () => {
  const draft = emptyDraft('in');
  draft.defaults.horn = '3/4 ';
  expect([usualAt(draft, 'horn'), usualAt(draft, 'survey.widthTop')]).toEqual(['3/4', '']);
  draft.otherDefaults = { survey: { widthTop: 16 } };
  expect(usualAt(draft, 'survey.widthTop')).toBe('16');
});

test('a job’s own ways and moisture are read and written; where it has none it takes the shop’s', () => {
  const own = { ways: { strip: 'rip' }, moisture: { atBuild: 7.5, low: 6, high: 14 } };
  const file = {
    format: 1,
    job: 'Sail loft',
    units: 'in',
    doors: [{ mark: 'A', opening: { width: '16', height: '30' } }],
  };
  expect(fileOf(draftOf({ ...file, ...own }, null, null))).toMatchObject(own);
  expect(fileOf(draftOf({ ...file, ...own }, null, null)).ways).toEqual({ strip: 'rip' });
  for (const name of ['ways', 'moisture']) expect(fileOf(draftOf(file, null, null))).not.toHaveProperty(name);
  const draft = draftOf(file, null, null);
  draft.moisture.high = 'damp';
  const read = readJob(fileOf(draft));
  expect(read.ok ? [] : read.faults.map(({ path, code }) => [path, code])).toEqual([
    ['moisture', 'moisture'],
  ]);
});
