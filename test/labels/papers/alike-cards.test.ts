import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';
import { papersPdf } from '#labels/papers/papers-pdf.ts';
import { outside, overlapping } from './page-faults.ts';
import { readPages } from './read-pages.ts';

const SIZE = { opening: { width: '16 1/2', height: '30' }, thickness: '7/8' };

function planOf(doors: readonly object[]): Plan {
  const planned = planFile({ format: 1, job: 'Row of lockers', units: 'in', doors }, { why: 'en' });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  return planned.value;
}

/** The texts of a plan's cards, page by page, and what was told of their progress. */
async function cardsOf(plan: Plan, doors?: readonly string[]) {
  const told: [number, number][] = [];
  const papers = await papersPdf(plan, {
    kind: 'cards',
    paper: 'letter',
    ...(doors === undefined ? {} : { doors }),
    progress: (done, of) => void told.push([done, of]),
  });
  if (!papers.ok) throw new Error(papers.fault);
  const pages = await readPages(papers.pdf);
  return {
    told,
    pages,
    texts: pages.map(({ texts }) => texts.map(({ text }) => text.replaceAll('\u00a0', ' ')).join(' ')),
  };
}

const codesOf = (plan: Plan, marks?: readonly string[]) =>
  plan.doors
    .filter(({ mark }) => marks === undefined || marks.includes(mark))
    .flatMap(({ parts }) => parts.map(({ code }) => `${code.slice(0, 5)} ${code.slice(5)}`));
const timesIn = (text: string, part: string) => text.split(part).length - 1;

test('doors that are alike have one card, headed by their names, with the codes of all their parts, each once', async () => {
  const plan = planOf([
    { mark: 'A', quantity: 12, ...SIZE },
    { mark: 'B', ...SIZE, opening: { width: '16', height: '30' } },
    { mark: 'C', quantity: 2, ...SIZE },
  ]);
  const { texts, told, pages } = await cardsOf(plan);
  expect(told).toEqual([
    [14, 15],
    [15, 15],
  ]);
  expect(texts).toHaveLength(4);
  const [first = '', second = '', ...other] = texts;
  for (const page of [first, second]) expect(page).toContain('Set-up card A-1 … A-12, C-1, C-2');
  for (const page of other) expect(page).toContain('Set-up card B-1');
  for (const code of codesOf(plan, ['A', 'C'])) expect(timesIn(first + second, code), code).toBe(1);
  for (const code of codesOf(plan, ['B'])) expect(timesIn(other.join(' '), code), code).toBe(1);
  for (const door of ['A-7', 'C-2']) expect(second).toContain(`${door} `);
  for (const page of pages) expect([...overlapping(page), ...outside(page)]).toEqual([]);
});

test.each([
  ['one setting', { groove: { depth: '25/64' } }],
  ['one exact number, the same where machines are set', { groove: { depth: '0.3751' } }],
  ['what is to be checked before cutting', { panel: { species: 'beech' } }],
])('doors that differ in %s have each a card of their own', async (_, other) => {
  const { texts } = await cardsOf(
    planOf([
      { mark: 'A', ...SIZE },
      { mark: 'B', ...SIZE, ...other },
    ]),
  );
  expect(texts.filter((text) => text.includes('Set-up card A-1'))).toHaveLength(2);
  expect(texts.filter((text) => text.includes('Set-up card B-1'))).toHaveLength(2);
});

test('doors asked for by name or mark alone are on the card, in the order of the job', async () => {
  const plan = planOf([
    { mark: 'A', quantity: 6, ...SIZE },
    { mark: 'B', quantity: 2, ...SIZE },
  ]);
  const { texts, told } = await cardsOf(plan, ['A-2', 'A-4', 'A-5', 'A-6', 'B']);
  const text = texts.join(' ');
  expect(texts[0]).toContain('Set-up card A-2, A-4 … A-6, B-1, B-2');
  expect(told).toEqual([[6, 6]]);
  for (const { door, parts } of plan.doors)
    for (const { code } of parts)
      expect(timesIn(text, `${code.slice(0, 5)} ${code.slice(5)}`), door).toBe(
        ['A-1', 'A-3'].includes(door) ? 0 : 1,
      );
});

test.each([
  ['200 doors of two marks', [100, 100]],
  ['2000 doors of one mark', [2000]],
  ['300 doors of as many marks', Array.from({ length: 300 }, () => 1)],
])(
  '%s that are alike have two pages, which say whose codes have no room and where they are',
  async (_, many) => {
    const plan = planOf(many.map((quantity, k) => ({ mark: `M${k}`, quantity, ...SIZE })));
    const { texts, told, pages } = await cardsOf(plan);
    expect(texts).toHaveLength(2);
    expect(told.at(-1)).toEqual([plan.doors.length, plan.doors.length]);
    const text = texts.join(' ');
    const left = Number(/The codes of (\d+) more of these doors have no room here/.exec(text)?.[1]);
    const shown =
      codesOf(plan).filter((code) => text.includes(code)).length / (plan.doors[0]?.parts.length ?? 0);
    expect(shown).toBeGreaterThan(20);
    expect(shown + left).toBe(plan.doors.length);
    expect(text).toContain('They are on the stickers');
    for (const page of pages) expect([...overlapping(page), ...outside(page)]).toEqual([]);
  },
);

test('where not even the names of alike doors have room, the card counts those that are not named', async () => {
  const doors = Array.from({ length: 800 }, (_, k) => ({
    mark: `LOCKER ${k}`,
    ...SIZE,
    ...(k % 2 === 0 ? {} : { opening: { width: String(17 + k / 64), height: '30' } }),
  }));
  const plan = planOf(doors);
  const alike = plan.doors.filter((_, k) => k % 2 === 0).map(({ mark }) => mark);
  const { texts } = await cardsOf(plan, alike);
  expect(texts).toHaveLength(2);
  const [first = ''] = texts;
  expect(first).toContain('Set-up card for 400 doors that are alike');
  const named = alike.filter(
    (mark) => first.includes(`${mark}-1,`) || first.includes(`${mark}-1 and`),
  ).length;
  expect(named).toBeGreaterThan(50);
  expect(first).toContain(`and ${400 - named} more doors`);
});
