import { expect, test } from 'vitest';
import { STATIONS } from '#core/stages/stations.ts';
import { REFUSALS } from '#core/marks/mark.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { atStation, cautionText } from '#core/telling/cautions-of.ts';
import { partName, placeName, settingName, stageName, stationName } from '#core/telling/names.ts';
import { counted, hasWords, say } from '#core/words/say.ts';
import demo from '#main/demo/demo-job.json' with { type: 'json' };

const planned = planFile(demo, { why: 'en' });
if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
const { doors } = planned.value;

test('every part, place, stage, station and setting of a plan has a name in words', () => {
  for (const door of doors)
    for (const stage of [...door.parts.flatMap(({ stages }) => stages), ...door.stages]) {
      expect(stageName(stage.stage)).not.toBe(stage.stage);
      expect(stationName(stage.station)).not.toBe(stage.station);
      for (const name of [
        ...Object.keys(stage.settings),
        ...(stage.places ?? []).flatMap(({ settings }) => Object.keys(settings)),
      ])
        expect(hasWords(`setting.${name}`), `${stage.stage} ${name} ${settingName(name)}`).toBe(true);
      for (const { at } of stage.places ?? []) expect(placeName(at)).not.toBe(at);
    }
  for (const { parts } of doors) for (const { part } of parts) expect(partName(part)).not.toBe(part);
});

test('every setting says where it is measured from and how it was reckoned, with no figure left open', () => {
  let counted = 0;
  for (const door of doors)
    for (const stage of [...door.parts.flatMap(({ stages }) => stages), ...door.stages])
      for (const { settings, why } of [stage, ...(stage.places ?? [])]) {
        expect(Object.keys(why ?? {})).toEqual(Object.keys(settings));
        for (const { from, reason } of Object.values(why ?? {})) {
          expect(from, stage.stage).not.toMatch(/[{}]/);
          expect(reason, stage.stage).not.toMatch(/[{}]/);
          counted += 1;
        }
      }
  expect(counted).toBeGreaterThan(500);
});

test.each(REFUSALS)('the refusal %s has words and a next step', (code) => {
  expect(hasWords(`refusal.${code}`)).toBe(true);
  expect(hasWords(`refusal.${code}.next`)).toBe(true);
});

/** Words that only fit this machine's own hazards. */
const HAZARDS: Readonly<Record<(typeof STATIONS)[number], RegExp>> = {
  milling: /jointer|planer/,
  'band-saw': /guard|carrier|backing out/i,
  'spindle-sander': /drum|dust|feet/i,
  'router-table': /cutter|pin|carrier/,
  'table-saw': /blade|rip|fence|push stick/i,
  mortiser: /chisel|clamp|ends/i,
  bench: /hands|vise|guide block/,
  assembly: /glue|diagonals|clamps/,
  fitting: /clamp|inward|hinge/,
};

test.each(STATIONS)(
  '%s warns of at least three hazards of its own, and defers to manual, codes and training',
  (station) => {
    const cautions = atStation(station).map(cautionText);
    expect(cautions.filter((caution) => HAZARDS[station].test(caution)).length).toBeGreaterThanOrEqual(3);
    expect(say('caution.first')).toMatch(/manual.*local codes.*training/);
  },
);

test('the stretched language is longer and keeps its figures', () => {
  const english = say('ui.kept', { what: 'P', stage: 'S' });
  const stretched = say('ui.kept', { what: 'P', stage: 'S' }, 'pseudo');
  expect(stretched.length).toBeGreaterThan(english.length * 1.15);
  expect(stretched).not.toMatch(/[{}]/);
});

test('one part waits and two wait, and what is left out of a set-up is called settings', () => {
  const waiting = (count: number) => counted('ui.choose.waiting', count, {}, 'de');
  expect([waiting(1), waiting(2)]).toEqual(['1 wartet', '2 warten']);
  const left = (count: number) => counted('ui.group-more-set', count);
  expect([left(1), left(4)]).toEqual(['and one more setting', 'and 4 more settings']);
});
