// @vitest-environment node

import { expect, test } from 'vitest';
import { builtInFields, completeDefaults } from '#core/job/complete-defaults.ts';
import { planFile } from '#core/plan/plan-file.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };
import { emptyDraft, valueAt } from '#ui/office/draft.ts';
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
  expect(draft.rows[0]).toMatchObject({ bead: '0', stile: '2', other: {} });
  expect(fileOf(draft)).toMatchObject({ doors: [{ bead: '0', stile: { width: '2' } }] });
  Object.assign(draft.rows[0] ?? {}, { bead: '', stile: ' ' });
  expect((fileOf(draft).doors as object[])[0]).not.toHaveProperty('bead');
  expect((fileOf(draft).doors as object[])[0]).not.toHaveProperty('stile');
});

test('a job as the hub keeps it, every measure written out, shows them as the whole job’s and is written back the same', () => {
  const kept = completeDefaults({ ...demo, defaults: { horn: '3/4' } }, builtInFields);
  const draft = draftOf(kept, demo.id, 1);
  expect([draft.defaults.horn, draft.defaults.thickness]).toEqual(['3/4', '3/4']);
  expect(draft.rows.map(({ bead, stile, species }) => [bead, stile, species])).toEqual(
    demo.doors.map((door: object) => [valueAt(door, 'bead') ?? '', valueAt(door, 'stile.width') ?? '', '']),
  );
  const back = fileOf(draft);
  expect(back.defaults).toEqual(kept.defaults);
  expect(planFile(back)).toEqual(planFile(kept));
});
