import { type LooseStage, looseStage } from '../../loose-plan.ts';
import { expect, test } from 'vitest';
import type { Plan, PlanPart } from '#core/plan/plan.ts';
import { panelTemplates } from '#labels/papers/panel-template.ts';
import { papersPdf } from '#labels/papers/papers-pdf.ts';
import { railTemplates } from '#labels/papers/rail-template.ts';
import { awkwardPlan, demoPlan, metricPlan, workedPlan } from './paper-jobs.ts';
import {
  along,
  apart,
  type At,
  numberOf,
  type ReadPage,
  readPages,
  type Stretch,
  TENTH,
} from './read-pages.ts';

const PLANS: readonly (readonly [string, Plan])[] = [
  ['the demo job', demoPlan],
  ['the worked example', workedPlan],
  ['a job in millimetres', metricPlan],
  ['an awkward job', awkwardPlan],
];
const SIZES = ['letter', 'a4'] as const;
const pointsPer = ({ units }: Plan) => (units === 'in' ? 72 : 72 / 25.4);

async function pagesOf(plan: Plan, kind: 'templates' | 'rods', paper: 'letter' | 'a4'): Promise<ReadPage[]> {
  const made = await papersPdf(plan, { kind, paper });
  if (!made.ok) throw new Error(made.fault);
  return readPages(made.pdf);
}

/** The head of a sheet: the text that stands highest at its left. */
const titleOf = ({ texts }: ReadPage) => texts.toSorted((a, b) => b.y - a.y || a.x - b.x)[0]?.text ?? '';
const tiles = (pages: readonly ReadPage[]) =>
  pages.filter((page) => /, sheet [A-Z]+\d+$/.test(titleOf(page)));
const numberedAs = (page: ReadPage) => Number(/^(\d+)\./.exec(titleOf(page))?.[1]);

interface Arch {
  readonly radius: number;
  readonly chord: number;
  readonly rise: number;
}

/** Every different arch of a plan in the order of its templates: rails first, then panels. */
function archesOf(plan: Plan): Arch[] {
  const stages = (name: string) => {
    const parts = plan.doors.flatMap((door) => door.parts.filter((part) => hasStage(part, name)));
    const different = new Map(
      parts.map((part) => [
        `${part.length} ${part.width} ${JSON.stringify(stageOf(part, name)?.settings)}`,
        part,
      ]),
    );
    return [...different.values()].map((part) => stageOf(part, name));
  };
  return [...stages('arch'), ...stages('cutout')].map((stage) => ({
    radius: numberOf(stage?.settings.radius) * pointsPer(plan),
    chord: numberOf(stage?.settings.chord) * pointsPer(plan),
    rise: numberOf(stage?.settings.rise) * pointsPer(plan),
  }));
}

function stageOf(part: PlanPart, name: string): LooseStage | undefined {
  return looseStage(part, name);
}
const hasStage = (part: PlanPart, name: string) => stageOf(part, name) !== undefined;

type Curve = Extract<Stretch, { kind: 'curve' }>;
const curvesOf = (page: ReadPage): Curve[] =>
  page.paths
    .map((path) => path.flatMap((each) => (each.kind === 'curve' ? [each] : [])))
    .find((all) => all.length > 0) ?? [];

/** The arch's ends and centre as the plan has them, from where the drawn arch begins. */
function circleOf(curves: readonly Curve[], { radius, rise }: Arch): { ends: readonly [At, At]; centre: At } {
  const ends = [curves[0]?.from, curves.at(-1)?.to].map((end) => end ?? { x: NaN, y: NaN });
  const [left, right] = ends.toSorted((a, b) => a.x - b.x) as [At, At];
  return { ends: [left, right], centre: { x: (left.x + right.x) / 2, y: left.y + rise - radius } };
}

for (const [name, plan] of PLANS)
  for (const paper of SIZES)
    test(`templates of ${name} on ${paper} follow the arch within a tenth of a millimetre all along`, async () => {
      const arches = archesOf(plan);
      const sheets = tiles(await pagesOf(plan, 'templates', paper)).filter(
        (page) => curvesOf(page).length > 0,
      );
      expect(new Set(sheets.map(numberedAs))).toEqual(new Set(arches.map((_, k) => k + 1)));
      for (const sheet of sheets) {
        const arch = arches[numberedAs(sheet) - 1] ?? { radius: NaN, chord: NaN, rise: NaN };
        const curves = curvesOf(sheet);
        const { ends, centre } = circleOf(curves, arch);
        expect(Math.abs(apart(ends[0], ends[1]) - arch.chord)).toBeLessThan(TENTH / 2);
        expect(Math.abs(ends[0].y - ends[1].y)).toBeLessThan(TENTH / 10);
        const off = curves
          .flatMap((curve) => along(curve, 25))
          .map((point) => Math.abs(apart(point, centre) - arch.radius));
        expect(Math.max(...off)).toBeLessThan(TENTH);
        const crown = Math.max(...curves.flatMap((curve) => along(curve, 25)).map(({ y }) => y));
        expect(Math.abs(crown - ends[0].y - arch.rise)).toBeLessThan(TENTH);
      }
    });

test('where the pivot is on the paper its cross is the arch’s centre, and where it is not the first sheet says so', async () => {
  const sheets = tiles(await pagesOf(workedPlan, 'templates', 'letter')).filter(
    (page) => numberedAs(page) === 1,
  );
  const arch = archesOf(workedPlan)[0] ?? { radius: NaN, chord: NaN, rise: NaN };
  const crossed = sheets.filter((page) => page.texts.some(({ text }) => text.startsWith('pivot, radius')));
  expect(crossed.length).toBeGreaterThan(0);
  for (const page of crossed) {
    const { centre } = circleOf(curvesOf(page), arch);
    const cross = page.paths.flat().filter(({ from, to }) => Math.abs(apart(from, to) - 28) < 0.01);
    expect(cross).toHaveLength(2);
    for (const { from, to } of cross)
      expect(apart({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }, centre)).toBeLessThan(TENTH);
  }
  const far = await pagesOf(awkwardPlan, 'templates', 'a4');
  const first = far[0]?.texts.map(({ text }) => text).join(' ') ?? '';
  expect(first).toMatch(
    /pivot lies off the paper: pivot: (≈ )?\d+ \d+\/\d+ in below the sight edge of the flats/,
  );
});

test('the crosses of neighbouring sheets lie at the same place of the drawing', async () => {
  const pages = tiles(await pagesOf(metricPlan, 'templates', 'a4')).filter((page) => numberedAs(page) === 1);
  expect(pages.length).toBeGreaterThan(1);
  const crosses = pages.map((page) => {
    const start = circleOf(curvesOf(page), { radius: 0, chord: 0, rise: 0 }).ends[0];
    return page.paths
      .flat()
      .filter(({ from, to }) => Math.abs(apart(from, to) - 14) < 0.01 && from.y === to.y)
      .map(({ from }) => ({ x: from.x + 7 - start.x, y: from.y - start.y }));
  });
  const [first = [], second = []] = crosses;
  expect(first).toHaveLength(2);
  for (const cross of first)
    expect(Math.min(...second.map((other) => apart(cross, other)))).toBeLessThan(TENTH / 10);
});

/** Where the lines across a rod must be, from its lower end, by the plan's own figures. */
function linesAcross(plan: Plan, part: PlanPart): number[] {
  const length = numberOf(part.length);
  const from = (end: unknown, value: number) => (end === 'top' ? length - value : value);
  const door = plan.doors.find(({ parts }) => parts.includes(part));
  const horn = numberOf(looseStage(door ?? { stages: [] }, 'trim')?.settings.horn);
  const both = (value: string | number | undefined) =>
    value === undefined ? [] : [numberOf(value), length - numberOf(value)];
  const stile = part.part.startsWith('stile');
  return [
    0,
    length,
    ...(stile && horn > 0 ? [horn, length - horn] : []),
    ...part.stages.flatMap(({ stage, settings, places = [] }: LooseStage) => {
      if (stage === 'mortise')
        return places.flatMap(({ at, settings: own }) => [
          from(at, numberOf(own.start)),
          from(at, numberOf(own.stop)),
        ]);
      if (stile && stage.startsWith('mitre'))
        return [numberOf(settings.sightEdge), numberOf(settings.shoulderLine)].map((each) =>
          from(settings.fromEnd, each),
        );
      if (stage === 'mitre') return both(settings.sightEdge);
      if (stage === 'shoulder') return both(settings.stop);
      if (stage === 'tenon') return both(settings.outerStop);
      return stage === 'arch' ? [...both(settings.springing), numberOf(settings.centre)] : [];
    }),
  ];
}

/** The lines across a sheet from the rod's outer edge that go beyond its sight edge, from its lower end. */
function drawnLines(page: ReadPage): { lines: number[]; length: number } {
  const outline = page.paths.find((path) => path.length >= 4) ?? [];
  const ys = outline.flatMap(({ from, to }) => [from.y, to.y]);
  const xs = outline.flatMap(({ from, to }) => [from.x, to.x]);
  const [low, left, right] = [Math.min(...ys), Math.min(...xs), Math.max(...xs)];
  const lines = page.paths.flatMap((path) => {
    const [only] = path;
    return path.length === 1 &&
      only !== undefined &&
      only.from.y === only.to.y &&
      Math.abs(only.from.x - left) < 0.01 &&
      Math.abs(only.to.x - right - 6) < 0.02
      ? [only.from.y - low]
      : [];
  });
  return { lines, length: Math.max(...ys) - low };
}

for (const [name, plan] of PLANS)
  test(`rods of ${name} have every line of the plan within a tenth of a millimetre, and no other`, async () => {
    const sheets = tiles(await pagesOf(plan, 'rods', name === 'the demo job' ? 'a4' : 'letter'));
    const frame = plan.doors.flatMap(({ parts }) => parts.filter(({ part }) => !part.startsWith('panel')));
    const scale = pointsPer(plan);
    const wanted = frame.map((part) => linesAcross(plan, part).map((each) => each * scale));
    const met = new Set<number>();
    for (const sheet of sheets) {
      const { lines, length } = drawnLines(sheet);
      const same = wanted.flatMap((each, k) =>
        Math.abs(Math.max(...each) - length) < TENTH &&
        each.every((y) => lines.some((drawn) => Math.abs(drawn - y) < TENTH)) &&
        lines.every((drawn) => each.some((y) => Math.abs(drawn - y) < TENTH))
          ? [k]
          : [],
      );
      expect(same.length, titleOf(sheet)).toBeGreaterThan(0);
      for (const k of same) met.add(k);
    }
    expect(met.size).toBe(frame.length);
  });

test('both check squares and the line on every sheet are true', async () => {
  const pages = await pagesOf(workedPlan, 'rods', 'a4');
  const lengths = (page: ReadPage) => page.paths.flat().map(({ from, to }) => apart(from, to));
  const mm = (100 / 25.4) * 72;
  const count = (page: ReadPage, long: number) =>
    lengths(page).filter((each) => Math.abs(each - long) < TENTH / 10).length;
  const first = pages[0];
  if (first === undefined) throw new Error('no pages');
  expect(count(first, mm)).toBe(4);
  expect(count(first, 72)).toBeGreaterThanOrEqual(4);
  for (const page of tiles(pages)) expect(count(page, mm)).toBeGreaterThanOrEqual(1);
});

test('a job without an arch has no templates, and an unknown door is named', async () => {
  const plain = { ...demoPlan, doors: demoPlan.doors.filter(({ mark }) => mark === 'BENCH') };
  expect(await papersPdf(plain, { kind: 'templates', paper: 'a4' })).toEqual({ ok: false, fault: 'no-arch' });
  expect(await papersPdf(demoPlan, { kind: 'rods', paper: 'a4', doors: ['BENCH-1', 'ATTIC'] })).toEqual({
    ok: false,
    fault: 'doors-unknown',
    doors: ['ATTIC'],
  });
});

test('on a template only what is sawn is a solid line: flats, springings and shoulders are dashed', () => {
  for (const plan of [demoPlan, workedPlan, metricPlan, awkwardPlan])
    for (const draft of [...railTemplates(plan), ...panelTemplates(plan)]) {
      const { strokes } = draft().figure;
      const solid = strokes.flatMap((stroke) =>
        stroke.kind === 'path' && !['hidden', 'centre', 'none'].includes(stroke.pen) ? [stroke.role] : [],
      );
      expect(solid).toEqual(['outline']);
      expect(strokes.some(({ role }) => role === 'flats' || role === 'springing')).toBe(true);
    }
});

test.each(['templates', 'rods'] as const)(
  'every sheet of the %s says its job, its doors, its part and which of how many it is',
  async (kind) => {
    const pages = tiles(await pagesOf(demoPlan, kind, 'letter'));
    const sheets = new Map<number, { k: number; of: number }[]>();
    for (const page of pages) {
      const texts = page.texts.map(({ text }) => text);
      expect(texts).toContain(demoPlan.job);
      expect(titleOf(page)).toMatch(kind === 'rods' ? /Rod: .*(stile|rail)/ : /Arched (top rail|panel)/);
      const foot = texts
        .map((text) => /^For (.+): sheet (\d+) of (\d+) of this drawing$/.exec(text))
        .find(Boolean);
      if (foot === undefined || foot === null) throw new Error(`${titleOf(page)} does not say its doors`);
      const first = foot[1]?.split(', ')[0]?.replace(/ and \d+ more$/, '');
      expect(demoPlan.doors.map(({ door }) => door)).toContain(first);
      const own = sheets.get(numberedAs(page)) ?? [];
      sheets.set(numberedAs(page), [...own, { k: Number(foot[2]), of: Number(foot[3]) }]);
    }
    expect(sheets.size).toBeGreaterThan(2);
    for (const own of sheets.values()) expect(own).toEqual(own.map((_, k) => ({ k: k + 1, of: own.length })));
  },
);
