// @vitest-environment node

import { expect, test } from 'vitest';
import { STATIONS } from '#core/stages/stations.ts';
import { atStation, cautionText } from '#core/telling/cautions-of.ts';
import { say } from '#core/words/say.ts';

/** What can hurt at each machine; each caution names at least one of these. */
const HAZARDS: Readonly<Record<(typeof STATIONS)[number], RegExp>> = {
  milling: /jointer|planer/i,
  'band-saw': /blade|saw|guard/i,
  'spindle-sander': /drum|dust/i,
  'router-table': /cutter|carrier/i,
  'table-saw': /saw|blade|fence|push stick/i,
  mortiser: /clamp|chisel|chips|ends first/i,
  bench: /edge|hand|chisel/i,
  assembly: /glue|diagonals|lifted|clamps/i,
  fitting: /door|plane|corner/i,
};

test.each(STATIONS)('%s has at least three cautions that name its own hazards, none twice', (station) => {
  const said = atStation(station).map(cautionText);
  expect(said.length).toBeGreaterThanOrEqual(3);
  expect(new Set(said).size).toBe(said.length);
  for (const sentence of said) expect(sentence).toMatch(HAZARDS[station]);
});

test('the machine’s manual, local codes and training come first', () => {
  expect(say('caution.first')).toMatch(/manual.*local codes.*training.*first/);
});
