import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { length } from '#core/length/length.ts';
import type { ShopProfile } from '#core/shop/shop-profile.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import worked from '../../fixtures/worked-example.json' with { type: 'json' };
import type { LooseStage } from '../../loose-plan.ts';

/** A metric door: horn 12, rails 70 and 57, bead 5, stiles 650 + 24 long. Worked by hand beside each value. */
const METRIC = {
  format: 1,
  job: 'Lock house',
  units: 'mm',
  doors: [
    { mark: 'A', opening: { width: '400', height: '650' }, midRails: [{ width: '60', centre: '300' }] },
  ],
};

function stagesOf(
  file: object,
  part: string,
  profile?: ShopProfile,
): (LooseStage & { after: readonly string[] })[] {
  const planned = planFile(file, profile === undefined ? {} : { profile });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  const found = planned.value.doors[0]?.parts.find((each) => each.part === part);
  if (found === undefined) throw new Error(`no ${part}`);
  return [...found.stages];
}
const named = (stages: readonly LooseStage[], name: string) => stages.find(({ stage }) => stage === name);

test('notched, the worked example’s stile loses its bead from each end to that end’s shoulder line', () => {
  const stages = stagesOf({ ...worked, ways: { strip: 'notch' } }, 'stile-left');
  // Horn 1/2 + rail 2 3/4 − bead 1/4 = 3; horn 1/2 + rail 3 3/4 at its ends − bead 1/4 = 4.
  expect(named(stages, 'notch-bottom')).toMatchObject({
    station: 'table-saw',
    settings: { fromEnd: 'bottom', from: '0', to: '3', length: '3', height: '1/4' },
    after: ['mortise', 'mitre-bottom'],
  });
  expect(named(stages, 'notch-top')).toMatchObject({
    settings: { fromEnd: 'top', from: '0', to: '4', length: '4', height: '1/4' },
    after: ['mortise', 'mitre-top'],
  });
  expect(named(stages, 'strip')).toBeUndefined();
  expect(named(stages, 'clean')).toMatchObject({ after: ['notch-bottom', 'notch-top'] });
});

test('a metric stile with a mid rail is notched at both ends, then behind the rail, in that order', () => {
  const stages = stagesOf(METRIC, 'stile-right');
  expect(stages.map(({ stage }) => stage)).toEqual([
    'mill',
    'bead',
    'groove',
    'mortise',
    'pare',
    'mitre-bottom',
    'mitre-top',
    'mitre-mid-1-lower',
    'mitre-mid-1-upper',
    'notch-bottom',
    'notch-top',
    'notch-mid-1',
    'clean',
  ]);
  // 12 + 70 − 5 = 77; 12 + 57 − 5 = 64; 12 + 300 − 30 + 5 = 287 to 12 + 300 + 30 − 5 = 337.
  expect(named(stages, 'notch-bottom')?.settings).toMatchObject({ to: '77', height: '5' });
  expect(named(stages, 'notch-top')?.settings).toMatchObject({ to: '64' });
  expect(named(stages, 'notch-mid-1')?.settings).toMatchObject({ from: '287', to: '337', length: '50' });
});

test('ripped, the notches behind mid rails come first, as in plans of old', () => {
  const stages = stagesOf({ ...METRIC, ways: { strip: 'rip' } }, 'stile-right');
  expect(stages.slice(-3).map(({ stage, after }) => [stage, after])).toEqual([
    ['notch-mid-1', ['mortise', 'mitre-mid-1-lower', 'mitre-mid-1-upper']],
    ['strip', ['mortise', 'mitre-bottom', 'mitre-top', 'mitre-mid-1-lower', 'mitre-mid-1-upper']],
    ['clean', ['strip', 'notch-mid-1']],
  ]);
});

test.each(['in', 'mm'] as const)(
  'in %s a groove that is routed is a slot on every member, and what follows waits for it',
  (units) => {
    const file = units === 'in' ? { ...worked } : METRIC;
    for (const part of ['stile-left', 'rail-bottom', 'rail-top']) {
      const stages = stagesOf({ ...file, ways: { groove: 'router' } }, part);
      expect(named(stages, 'groove'), part).toBeUndefined();
      // Wall: half of 7/8 − 1/4, half of 19 − 6.
      expect(named(stages, 'slot')?.settings, part).toEqual(
        units === 'in'
          ? { width: '1/4', depth: '3/8', cutterHeight: '5/16' }
          : { width: '6', depth: '10', cutterHeight: '6 1/2' },
      );
      for (const next of ['mortise', 'shoulder'])
        if (named(stages, next) !== undefined) expect(named(stages, next)).toMatchObject({ after: ['slot'] });
    }
  },
);

test.each([
  ['1', '1.889'],
  ['2', '0.840'],
  ['3', '0.492'],
])(
  'a blade of 10 in raised %s over 7/8 stock leaves %s uncut on the top face, √(ρ² − (ρ − k)²) − √(ρ² − (ρ − k + T)²)',
  (raised, lag) => {
    const profile = builtInProfile('in');
    const blade = { ...profile.blade, ripHeight: length(Number(raised)) };
    const { settings } = named(stagesOf(worked, 'stile-left', { ...profile, blade }), 'strip') ?? {};
    const [k, t, radius] = [Number(raised), 7 / 8, 5];
    const reach = Math.sqrt(radius ** 2 - (radius - k) ** 2);
    const byHand = reach - Math.sqrt(radius ** 2 - (radius - k + t) ** 2);
    expect(settings?.bladeHeight).toBe(raised);
    expect(Number(settings?.reach)).toBeCloseTo(reach, 5);
    expect(Number(settings?.lag)).toBeCloseTo(byHand, 5);
    expect(byHand.toFixed(3)).toBe(lag);
  },
);

test('a blade that the shop raises less than just clear of the stock is raised that high', () => {
  const profile = builtInProfile('mm');
  const at = (ripHeight: number) =>
    named(
      stagesOf({ ...METRIC, ways: { strip: 'rip' } }, 'stile-left', {
        ...profile,
        blade: { ...profile.blade, ripHeight: length(ripHeight) },
      }),
      'strip',
    )?.settings.bladeHeight;
  // 19 + 3.
  expect([at(10), at(22), at(40)]).toEqual(['22', '22', '40']);
});
