import { expect, test } from 'vitest';
import { readJob } from '#core/job/read-job.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { readProfile } from '#core/shop/read-profile.ts';
import { speakFaults } from '#core/telling/speak-faults.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';
import type { PrintedPlan } from '#core/plan/printed-plan.ts';
import { fixedJobs } from '../versions/fixed-jobs.ts';

const DOOR = { mark: 'A', opening: { width: '16', height: '30' } };
const JOB = { format: 1, job: 'x', units: 'in', doors: [DOOR] };

/** The words that the stretched language has not marked: each vowel of its own has an accent, and most are doubled. */
function unmarked(sentence: string): string[] {
  return sentence.replace(/åa|ëe|øo|üu/g, '').match(/\p{L}*[aeiouAEO]\p{L}*/gu) ?? [];
}

/** Every sentence of a plan, and every figure that is in words. */
function wordsOf(plan: PrintedPlan): string[] {
  return plan.doors.flatMap(({ notes, parts, stages }) => [
    ...notes.flatMap(({ message, figures }) => [message, ...Object.values(figures).map(String)]),
    ...[...parts.flatMap((part) => part.stages), ...stages]
      .flatMap((stage) => [stage, ...(stage.places ?? [])])
      .flatMap(({ why }) => Object.values(why ?? {}))
      .flatMap(({ from, reason }) => [from, reason]),
  ]);
}

/** Doors of which much is to be said. */
const DOUBTFUL = [
  { opening: { width: '9', height: '9' }, horn: '0', panel: { thickness: '1/4', species: 'beech' } },
  { midRails: [{ width: '3', centre: '12' }], groove: { depth: '1/2' }, bottomRail: { width: '4' } },
  { arch: { rise: '4 3/4', flat: '1/8' }, bead: '1/16', thickness: '1' },
  {
    survey: {
      widthBottom: '17',
      widthTop: '17 1/4',
      heightLeft: '30',
      heightRight: '30',
      diagonalUp: '34 31/64',
      diagonalDown: '34 31/64',
    },
  },
];

test('nothing of what is said of a plan in another language is English, a setting’s reason neither', () => {
  const jobs = [
    ...fixedJobs(),
    { ...JOB, doors: DOUBTFUL.map((own, k) => ({ ...DOOR, mark: `D${k}`, ...own })) },
  ];
  const said = jobs.flatMap((job) => {
    const planned = planFile(job, { why: 'pseudo' });
    return planned.ok ? wordsOf(speakPlan(planned.value, 'pseudo')) : [];
  });
  expect(said.length).toBeGreaterThan(2000);
  const english = said.flatMap((each) => unmarked(each).map((word) => `${word}: ${each}`));
  expect(english).toEqual([]);
});

test('a fault in another language has nothing English but what was typed and the names of the file’s fields', () => {
  const doors = [
    { stile: { width: '8' } },
    { opening: { width: '16', height: '5' } },
    { bottomRail: { width: '13/16' } },
    { groove: { width: '3/16' } },
    { tenon: { length: '2' }, mortise: { endPlay: '1/8' } },
    { arch: { rise: '5', flat: '2' } },
    { thickness: 'x', bead: -1, horn: [], hinge: 'up', midRails: {}, arch: 7 },
    { opening: { width: "1'1/0", height: 0 }, quantity: 'q' },
  ].map((own, k) => ({ ...DOOR, mark: `D${k}`, ...own }));
  const planned = planFile({ ...JOB, doors: doors.slice(0, 6) });
  const read = readJob({
    ...JOB,
    job: 'x'.repeat(61),
    due: '2',
    id: '-',
    doors: [...doors.slice(6), 7, DOOR, DOOR],
  });
  const profile = readProfile({ blade: { diameter: '10', greatestHeight: '6' } }, 'in');
  const faults = [planned, read, profile].flatMap((each) => (each.ok ? [] : each.faults));
  expect(faults.length).toBeGreaterThan(15);
  const english = speakFaults(faults, 'pseudo').flatMap(({ code, message }) =>
    unmarked(message.replace(/"[^"]*"|doors\[\d+\]\.mark|YYYY-MM-DD/g, '')).map(
      (word) => `${code} ${word}: ${message}`,
    ),
  );
  expect(english).toEqual([]);
});
