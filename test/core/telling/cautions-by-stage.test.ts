import { expect, test } from 'vitest';
import { AT_STATIONS } from '#core/stages/cautions/at-stations.ts';
import { factsOf, STAGE_KINDS } from '#core/stages/table.ts';
import { cautionInGeneral, CAUTIONS_BY_STAGE, kindTitle, SOURCES } from '#core/telling/cautions-by-stage.ts';

test('every caution stands once in the list by station and stage', () => {
  const listed = CAUTIONS_BY_STAGE.flatMap(({ stages, always }) => [
    ...stages.flatMap(({ cautions }) => cautions),
    ...always,
  ]).map(({ key }) => key);
  const all = [
    ...STAGE_KINDS.flatMap((kind) => factsOf(kind).cautions),
    ...Object.values(AT_STATIONS).flat(),
  ];
  expect([...listed].sort()).toEqual(all.map(({ key }) => key).sort());
  expect(new Set(listed).size).toBe(listed.length);
});

test('the rip stands at both saws, each with its own', () => {
  const at = CAUTIONS_BY_STAGE.flatMap(({ station, stages }) =>
    stages.filter(({ kind }) => kind === 'strip').map(({ cautions }) => [station, cautions.length]),
  );
  expect(at.map(([station]) => station)).toEqual(['band-saw', 'table-saw']);
  for (const [, count] of at) expect(count).toBeGreaterThanOrEqual(3);
});

test('each source is numbered once, and each caution has one that is numbered', () => {
  expect(new Set(SOURCES).size).toBe(SOURCES.length);
  for (const { stages, always } of CAUTIONS_BY_STAGE)
    for (const { from } of [...stages.flatMap(({ cautions }) => cautions), ...always])
      for (const source of from) expect(SOURCES).toContain(source);
});

test('titles and words of no part leave no name of a figure in braces', () => {
  for (const { stages } of CAUTIONS_BY_STAGE)
    for (const { kind, cautions } of stages)
      expect([kindTitle(kind), ...cautions.map(cautionInGeneral)].join(' ')).not.toMatch(/[{}]/);
  expect(kindTitle('mitre-end')).toMatch(/bottom end · .*top end/);
});
