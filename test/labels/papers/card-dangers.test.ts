import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import type { PrintedPlan } from '#core/plan/printed-plan.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';
import { papersPdf } from '#labels/papers/papers-pdf.ts';
import { type ReadPage, readPages } from './read-pages.ts';

/** A door with much to say of, a mid rail for every panel but one, all panels short. */
const DOOR = {
  mark: 'A',
  opening: { width: '11', height: '46' },
  thickness: '1 1/4',
  horn: '0',
  bead: '1/32',
  mortise: { clearance: '0', endPlay: '0' },
  tenon: { length: '7/16' },
  panel: { clearance: '0', thickness: '3/16', species: 'beech' },
  midRails: Array.from({ length: 7 }, (_, k) => ({ width: '1 1/2', centre: String(6 + 5 * k) })),
};

const overlap = ({ texts }: ReadPage) =>
  texts.filter((a, k) =>
    texts.some(
      (b, j) => j > k && Math.abs(a.y - b.y) < 4 && a.x < b.x + b.width - 0.3 && b.x < a.x + a.width - 0.3,
    ),
  );

async function cardOf(doors: readonly object[], paper: 'letter' | 'a4'): Promise<[ReadPage, PrintedPlan]> {
  const planned = planFile({ format: 1, job: 'Tall', units: 'in', doors });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  const papers = await papersPdf(planned.value, { kind: 'cards', paper });
  if (!papers.ok) throw new Error(papers.fault);
  const [first] = await readPages(papers.pdf);
  if (first === undefined) throw new Error('no page');
  return [first, speakPlan(planned.value, 'en')];
}
const shortOf = (plan: PrintedPlan) => plan.doors[0]?.notes.filter(({ id }) => id === 'short-piece') ?? [];
const textOf = ({ texts }: ReadPage) => plain(texts.map((each) => each.text).join(' '));
const plain = (words: string) => words.replaceAll('\u00a0', ' ');

test.each(['letter', 'a4'] as const)(
  'a setup card on %s says every danger before it says that there is more',
  async (paper) => {
    const [page, plan] = await cardOf([{ ...DOOR, midRails: [{ width: '1 1/2', centre: '9' }] }], paper);
    const text = textOf(page);
    expect(shortOf(plan)).toHaveLength(2);
    for (const { message } of shortOf(plan)) expect(text).toContain(plain(message));
    expect(overlap(page).map((each) => each.text)).toEqual([]);
  },
);

test.each(['letter', 'a4'] as const)(
  'where a card on %s has no room for each, what they have in common is said, and no danger is cut off',
  async (paper) => {
    const [page, plan] = await cardOf([DOOR], paper);
    expect(shortOf(plan).length).toBeGreaterThan(6);
    const text = textOf(page);
    const danger = text.indexOf('Short pieces: never hand-feed them');
    expect(danger).toBeGreaterThan(0);
    expect(text.indexOf('… and more')).toBeGreaterThan(danger);
    expect(overlap(page).map((each) => each.text)).toEqual([]);
  },
);
