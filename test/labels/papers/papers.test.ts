import { looseStage } from '../../loose-plan.ts';
import { expect, test } from 'vitest';
import { PAPER_KINDS, type PaperKind } from '#core/api/prints-api.ts';
import type { Plan } from '#core/plan/plan.ts';
import { doorCode } from '#labels/papers/job-sheet.ts';
import { papersPdf } from '#labels/papers/papers-pdf.ts';
import { inFull } from '../../samples.ts';
import { codesOn } from '../stickers/scan.ts';
import { awkwardPlan, demoPlan, metricPlan, rippedPlan } from './paper-jobs.ts';
import { outside, overlapping } from './page-faults.ts';
import { readPages } from './read-pages.ts';

/** Doors of one mark are alike: the first of each is enough. */
const oneOfEach: Plan = { ...demoPlan, doors: demoPlan.doors.filter(({ door }) => door.endsWith('-1')) };
const PLANS: readonly (readonly [string, Plan])[] = [
  ['the demo job', oneOfEach],
  ['a job in millimetres', metricPlan],
  ['an awkward job', { ...awkwardPlan, doors: awkwardPlan.doors.slice(0, 3) }],
];

/** Each job on the paper of its own country; on both where the proofs run. */
function papersFor({ units }: Plan): readonly ('letter' | 'a4')[] {
  return inFull ? ['letter', 'a4'] : [units === 'in' ? 'letter' : 'a4'];
}

async function made(plan: Plan, kind: PaperKind, paper: 'letter' | 'a4'): Promise<Uint8Array> {
  const papers = await papersPdf(plan, { kind, paper });
  if (!papers.ok) throw new Error(papers.fault);
  return papers.pdf;
}

for (const kind of PAPER_KINDS)
  for (const [name, plan] of PLANS)
    test(
      `${kind} of ${name}: no word is cut off, none stands on another, none is too small to read`,
      { timeout: 30_000 },
      async () => {
        for (const paper of papersFor(plan))
          for (const [k, page] of (await readPages(await made(plan, kind, paper))).entries()) {
            const where = `${paper}, page ${k + 1}`;
            expect(outside(page), where).toEqual([]);
            expect(overlapping(page), where).toEqual([]);
            expect(Math.min(...page.texts.map(({ size }) => size)), where).toBeGreaterThan(4.5);
          }
      },
    );

test('the same plan gives byte for byte the same papers', { timeout: 30_000 }, async () => {
  for (const kind of PAPER_KINDS) {
    const [first, second] = [await made(demoPlan, kind, 'a4'), await made(demoPlan, kind, 'a4')];
    expect(Buffer.from(first).equals(Buffer.from(second)), kind).toBe(true);
  }
});

test('a card takes two pages at most and has every setting of its door', { timeout: 30_000 }, async () => {
  for (const door of oneOfEach.doors) {
    const papers = await papersPdf(demoPlan, { kind: 'cards', paper: 'letter', doors: [door.door] });
    if (!papers.ok) throw new Error(papers.fault);
    expect(papers.pages, door.door).toBeLessThanOrEqual(2);
    const text = (await readPages(papers.pdf))
      .flatMap(({ texts }) => texts.map((each) => each.text))
      .join(' ');
    for (const { code } of door.parts) expect(text).toContain(`${code.slice(0, 5)} ${code.slice(5)}`);
    const exact = door.parts
      .flatMap(({ stages }) => stages.flatMap(({ settings }) => Object.values(settings)))
      .filter(
        (value) =>
          typeof value === 'string' &&
          /^[\d /]+$/.test(value) &&
          !/\/(?!2$|4$|8$|16$|32$|64$)\d+$/.test(value),
      );
    for (const value of exact) expect(text).toContain(String(value));
  }
});

test('a card names what to set beside its line, and tells the steps of the stopped rip, the same step once', async () => {
  const papers = await papersPdf(rippedPlan, { kind: 'cards', paper: 'letter', doors: ['BENCH-1'] });
  if (!papers.ok) throw new Error(papers.fault);
  const text = (await readPages(papers.pdf)).flatMap(({ texts }) => texts.map((each) => each.text)).join(' ');
  const [door] = rippedPlan.doors.filter((each) => each.door === 'BENCH-1');
  const mitre = looseStage(door?.parts[0] ?? { stages: [] }, 'mitre-bottom')?.settings.sightEdge;
  expect(mitre).toBe('3 1/4');
  expect(text).toContain('3 15/64 (line at 3 1/4)');
  expect(text.match(/Feed to the stop/g)).toHaveLength(1);
  for (const end of ['BOTTOM', 'TOP']) expect(text.split(`from its ${end} end`)).toHaveLength(3);
});

test('the sheet’s bars call up every door', { timeout: 30_000 }, async () => {
  const found = await codesOn(await made(demoPlan, 'sheet', 'letter'));
  expect(found).toEqual(new Set(demoPlan.doors.map(doorCode)));
});

test('progress is told through drawing, tiling and sheets, and never falls back', async () => {
  for (const kind of PAPER_KINDS) {
    const told: (readonly [number, number])[] = [];
    const papers = await papersPdf(demoPlan, {
      kind,
      paper: 'a4',
      progress: (done, of) => void told.push([done, of]),
    });
    if (!papers.ok) throw new Error(papers.fault);
    expect(told.length, kind).toBeGreaterThanOrEqual(kind === 'sheet' ? 1 : 4);
    const [, all] = told.at(-1) ?? [];
    expect(told.at(-1), kind).toEqual([all, all]);
    for (const [k, [done, of]] of told.entries()) {
      expect(of, kind).toBe(all);
      expect(done, kind).toBeGreaterThanOrEqual(told[k - 1]?.[0] ?? 0);
    }
  }
});

test('what progress throws stops the making at once, before the next drawing is begun', async () => {
  for (const kind of PAPER_KINDS) {
    let told = 0;
    const stopped = papersPdf(demoPlan, {
      kind,
      paper: 'a4',
      progress: (done) => {
        told += 1;
        // The first card is that of the three doors of BENCH, which are alike.
        expect(done).toBe(kind === 'cards' ? 3 : 1);
        throw new Error('taken back');
      },
    });
    await expect(stopped, kind).rejects.toThrow('taken back');
    expect(told, kind).toBe(1);
  }
});
