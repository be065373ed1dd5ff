import { afterEach, expect, test } from 'vitest';
import type { PlanDoor } from '#core/plan/plan.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { paperStep } from '#core/settable/step.ts';
import { settableDoor } from '#core/settable/settable-door.ts';
import { cautionText, gravestOf } from '#core/telling/cautions-of.ts';
import { type Language, say, speak } from '#core/words/say.ts';
import { settingLines } from '#labels/papers/card-settings.ts';
import { cardStations } from '#labels/papers/card-works.ts';
import { papersPdf } from '#labels/papers/papers-pdf.ts';
import { withUnit } from '#labels/pdf/value-on-paper.ts';
import { everyStageJob } from '../../e2e/every-stage-job.ts';
import { inFull } from '../../samples.ts';
import { outside, overlapping } from './page-faults.ts';
import { readPages } from './read-pages.ts';

/** An arch, three mid rails, four panels: the most that a door usually has. */
function largeJob(units: 'in' | 'mm'): unknown {
  const [opening, midRails] =
    units === 'in'
      ? [{ width: '14 3/4', height: '64 1/2' }, ['12', '29', '44'].map((centre) => ({ width: '3', centre }))]
      : [{ width: '375', height: '1680' }, ['300', '707', '1100'].map((centre) => ({ width: '75', centre }))];
  return {
    format: 1,
    job: `Long gallery ${units}`,
    units,
    ways: { strip: 'rip' },
    doors: [
      {
        mark: 'LARGE',
        opening,
        midRails,
        arch: units === 'in' ? { rise: '1 3/4', flat: '3/4' } : { rise: '45', flat: '20' },
      },
    ],
  };
}

type Sort = readonly [
  name: string,
  job: (units: 'in' | 'mm') => unknown,
  'in' | 'mm',
  'letter' | 'a4',
  Language,
];
const JOBS = [
  ['every kind of stage', everyStageJob],
  ['three mid rails', largeJob],
] as const;
const all = JOBS.flatMap(([name, job]) =>
  (['in', 'mm'] as const).flatMap((units) =>
    (['letter', 'a4'] as const).flatMap((paper) =>
      (['en', 'en-GB', 'de', 'pseudo'] as const).map((language): Sort => [name, job, units, paper, language]),
    ),
  ),
);
const SOME: readonly Sort[] = [
  ['every kind of stage', everyStageJob, 'in', 'letter', 'en'],
  ['three mid rails', largeJob, 'in', 'letter', 'pseudo'],
  ['three mid rails', largeJob, 'mm', 'a4', 'de'],
];

afterEach(() => {
  speak('en');
});

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const timesIn = (text: string, part: string) => text.split(plain(part)).length - 1;
const stagesOf = (door: PlanDoor) => [
  ...door.parts.flatMap((part) => part.stages.map((stage) => ({ stage, part }))),
  ...door.stages.map((stage) => ({ stage, part: undefined })),
];

test.each(inFull ? all : SOME)(
  'the card of a door with %s has two pages with every setting and gravest caution: %o %s %s %s',
  { timeout: 60_000 },
  async (_, job, units, paper, language) => {
    const planned = planFile(job(units), { why: language });
    if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
    speak(language);
    const papers = await papersPdf(planned.value, { kind: 'cards', paper });
    if (!papers.ok) throw new Error(papers.fault);
    expect(papers.pages).toBe(2);
    const pages = await readPages(papers.pdf);
    for (const page of pages) expect([...outside(page), ...overlapping(page)]).toEqual([]);
    const text = plain(pages.flatMap(({ texts }) => texts.map((each) => each.text)).join(' '));
    const [exact] = planned.value.doors;
    if (exact === undefined) throw new Error('no door');
    const door = settableDoor(exact, paperStep(units));
    const works = cardStations(door, units).flatMap((station) => station.works);
    // A paragraph goes on in the next column, under its work's name, or on the next page.
    const rests = new Set(works.map(({ title }) => say('paper.card-rest', { title })));
    const inColumns = pages
      .flatMap(({ texts, height }) => texts.filter(({ y }) => y > 50 && y < height - 56))
      .filter(({ text: each }) => !rests.has(each))
      .map((each) => each.text);
    const running = plain(inColumns.join(' '));
    for (const { stage, part } of stagesOf(door)) {
      for (const { name, value } of settingLines(stage, units))
        expect(text, `${stage.stage}: ${name}`).toContain(plain(`${name} ${value}`));
      const lengths = { units, read: (value: string | number) => withUnit(value, units) };
      const gravest = cautionText(gravestOf(stage, { ...(part === undefined ? {} : { part }), lengths }));
      expect(timesIn(running, `! ${gravest}`), gravest).toBe(1);
    }
    expect(text).toContain(plain(say('caution.first')));
    const there = timesIn(text, say('paper.card-steps-there', { steps: say('ui.how') }));
    const told = works.filter(({ how }) => how.every((step) => running.includes(plain(step.text))));
    expect(told.length + there).toBe(works.length);
    const leftOut = say('paper.card-left-out', { steps: say('ui.how'), safety: say('ui.cautions') });
    expect(text.includes(plain(leftOut))).toBe(there > 0);
  },
);
