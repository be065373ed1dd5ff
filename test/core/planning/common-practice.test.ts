import { looseStage } from '../../loose-plan.ts';
import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';

// A hatch of ours between a kitchen and its pantry, measured 13 7/16 × 27 5/16, worked on paper by rules of thumb of
// common practice (no source). Every size is named here, so that no built-in default has a part in it.
const planned = planFile({
  format: 1,
  job: 'Pantry hatch',
  units: 'in',
  doors: [
    {
      mark: 'HATCH',
      opening: { width: '13 7/16', height: '27 5/16' },
      reveal: '1/16',
      thickness: '13/16',
      stile: { width: '2 1/8' },
      bottomRail: { width: '2 7/8' },
      topRail: { width: '2 1/8' },
      bead: '3/16',
      groove: { width: '1/4', depth: '3/16' },
      tenon: { length: '1 1/16', outerSetback: '3/8', innerSetback: '1/4', haunchClearance: '0' },
      mortise: { clearance: '1/16', endPlay: '1/32' },
      horn: '3/8',
      panel: { thickness: '1/2', clearance: '1/16' },
    },
  ],
});
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const [door] = planned.value.doors;
const part = (name: string) => door?.parts.find((each) => each.part === name);
const stage = (name: string, of: string) => {
  const found = part(name);
  return found === undefined ? undefined : looseStage(found, of);
};

test('a pantry hatch has the frame that is reckoned by hand for it', () => {
  // Between the stiles 13 7/16 − 2 × 2 1/8 = 9 3/16. A bead more on each side is 9 9/16 from shoulder to shoulder.
  expect(door?.values.sightWidth).toBe('9 3/16');
  expect(door?.values.shoulderToShoulder).toBe('9 9/16');
  // A tenon more on each side: 9 9/16 + 2 × 1 1/16.
  expect(part('rail-bottom')?.length).toBe('11 11/16');
  expect(part('rail-top')?.length).toBe('11 11/16');
  // 27 5/16 and a horn of 3/8 at each end.
  expect(part('stile-left')?.length).toBe('28 1/16');
  // The reveal of 1/16 comes off all round.
  expect(door?.values.finishedWidth).toBe('13 5/16');
  expect(door?.values.finishedHeight).toBe('27 3/16');
});

test('its bead, mortises and tenons are those reckoned by hand', () => {
  // The groove leaves (13/16 − 1/4) / 2 = 9/32 on each side, and a bead of 6/32 leaves a fillet of 3/32 of that.
  expect(stage('stile-left', 'bead')?.settings.fillet).toBe('3/32');
  // From the sight edge: the bead, the tenon, and room for glue: 3/16 + 1 1/16 + 1/16. The groove is 3/16 of that.
  expect(stage('stile-left', 'mortise')?.settings.depthFromEdge).toBe('1 5/16');
  expect(stage('stile-left', 'mortise')?.settings.depthFromGroove).toBe('1 1/8');
  // Of the bottom rail's 2 7/8 go the bead 3/16, 3/8 outside and 1/4 inside; of the top rail's 2 1/8 the same.
  expect(stage('rail-bottom', 'tenon')?.settings.width).toBe('2 1/16');
  expect(stage('rail-top', 'tenon')?.settings.width).toBe('1 5/16');
  // The groove goes no deeper than the bead: there is no haunch, and the outer cut runs the whole tenon.
  expect(stage('rail-bottom', 'tenon')?.settings.outerStop).toBe('1 1/16');
  // From the end: the horn and 3/8, less 1/32 of play; and a tenon and two plays farther on it stops.
  const bottom = stage('stile-left', 'mortise')?.places?.find(({ at }) => at === 'bottom')?.settings;
  expect([bottom?.start, bottom?.stop]).toEqual(['23/32', '2 27/32']);
});

test('its panel is the one reckoned by hand', () => {
  // It goes 1/8 into a groove of 3/16, which leaves 1/16 clear: 9 3/16 + 1/4 wide.
  expect(part('panel')?.width).toBe('9 7/16');
  // Between the rails 27 5/16 − 2 7/8 − 2 1/8 = 22 5/16, and 1/4 more.
  expect(part('panel')?.length).toBe('22 9/16');
});
