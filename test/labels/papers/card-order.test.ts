import { expect, test } from 'vitest';
import { STATIONS } from '#core/stages/stations.ts';
import { stageName } from '#core/telling/names.ts';
import { cardStations } from '#labels/papers/card-works.ts';
import { demoPlan } from './paper-jobs.ts';

// A bead that is ripped away takes the edge with it from which a mortise's depth is measured.
test('what a card prints above the work that must be done before it says so', () => {
  let named = 0;
  for (const door of demoPlan.doors) {
    const stages = [...door.parts.flatMap((part) => part.stages), ...door.stages];
    const printed = cardStations(door, demoPlan.units).flatMap(({ station, works }) =>
      works.flatMap((work) =>
        work.groups.flatMap(({ members }) =>
          members.map(({ title, parts }) => ({
            station,
            told: `${title === '' ? work.title : title}: ${parts === '' ? work.parts : parts}`,
          })),
        ),
      ),
    );
    for (const { stage, station, after } of stages)
      for (const before of after) {
        const first = stages.find((each) => each.stage === before);
        if (first === undefined || STATIONS.indexOf(first.station) <= STATIONS.indexOf(station)) continue;
        const told = printed.filter((each) => each.station === station).map((each) => each.told);
        expect(told).toContainEqual(
          expect.stringMatching(new RegExp(`^${stageName(stage)}: .*First: .*${stageName(before)}`)),
        );
        named += 1;
      }
  }
  expect(named).toBeGreaterThan(0);
});
