import { expect, test } from 'vitest';
import { doorSetup } from '#core/views/door-setup.ts';
import { doorView } from '#core/views/door-view.ts';
import { jointSections } from '#core/views/joint-sections.ts';
import { layOut } from '#core/drawing/layout.ts';
import type { Drawing } from '#core/drawing/model.ts';
import type { Figure } from '#core/drawing/figure.ts';
import { partView } from '#core/views/part-view.ts';
import { setupView } from '#core/views/setup-view.ts';
import { surveyView } from '#core/views/survey-view.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';
import { LANGUAGES } from '#core/words/languages.ts';
import { speak } from '#core/words/say.ts';
import mixed from '../../fixtures/mixed-job.json' with { type: 'json' };
import { plans } from './drawn-plans.ts';
import { runsThrough, linesOf, textsOf } from '../drawing/strokes.ts';

const more = [
  planFile(mixed),
  planFile({
    format: 1,
    job: 'Extremes',
    units: 'in',
    doors: [
      { mark: 'LOW', opening: { width: '12', height: '9' } },
      { mark: 'SLIM', opening: { width: '12', height: '80' } },
      { mark: 'WIDE', opening: { width: '30', height: '12' } },
    ],
  }),
  planFile({
    format: 1,
    job: 'Extremes in millimeters',
    units: 'mm',
    doors: [
      { mark: 'LOWM', opening: { width: 305, height: 230 } },
      { mark: 'SLIMM', opening: { width: 305, height: 2030 }, midRails: [{ width: 75, centre: 900 }] },
    ],
  }),
].map((each): Plan => {
  if (!each.ok) throw new Error(JSON.stringify(each.faults));
  return each.value;
});

/** Rooms and heights of type: the office's preview, a setup at both sizes of screen, and a card on paper. */
const ROOMS = {
  preview: { width: 540, height: 400, text: 18 },
  small: { width: 656, height: 420, text: 20.5 },
  large: { width: 1010, height: 650, text: 31.5 },
  card: { width: 324, height: 330, text: 9 },
} as const;

/** The preview’s room for a slender door. */
const SLENDER = { width: 450, height: 600, text: 18 };

/** Every view of the first door of each mark, by turns in each of the rooms; a door’s own views in all of them. */
function* figures(): Generator<{ name: string; figure: Figure }> {
  let turn = 0;
  for (const { doors, units } of [...plans, ...more])
    for (const door of doors.filter(({ door: name }) => name.endsWith('-1'))) {
      turn += 1;
      const drawings: [string, Drawing | null][] = [
        ['door', doorView(door, units, 'built', 'left')],
        ['survey', surveyView(door, units, 'left')],
        ...door.stages.map((stage): [string, Drawing] => [
          stage.stage,
          doorSetup(door, stage, units, { hinge: 'right' }),
        ]),
        ...jointSections(door, units).map((each, k): [string, Drawing] => [`section-${k + 1}`, each]),
        ...door.parts.flatMap((part): [string, Drawing][] => [
          [part.part, partView(part, units)],
          ...part.stages.flatMap((stage) =>
            (stage.places ?? [{ at: undefined }]).map(({ at }): [string, Drawing] => [
              `${part.part}-${stage.stage}${at === undefined ? '' : `-${at}`}`,
              setupView(part, stage, units, at),
            ]),
          ),
        ]),
      ];
      for (const [k, [view, drawing]] of drawings.entries())
        for (const [n, [room, options]] of Object.entries(ROOMS).entries())
          if (drawing !== null && (n === (k + turn) % 4 || /^(door|survey|glue|trim)$/.test(view)))
            yield { name: `${door.door} ${view} ${room}`, figure: layOut(drawing, options) };
    }
}

/** What a text and a line may share: the width of the line, where the letters' box ends. */
const TOUCH = 0.5;

test.each(LANGUAGES)(
  'in %s no line of any drawing runs through a word or a value, and no two of them stand on each other',
  (language) => {
    speak(language);
    const wrong: string[] = [];
    let counted = 0;
    for (const { name, figure } of figures()) {
      const [lines, texts] = [linesOf(figure), textsOf(figure)];
      for (const [k, a] of texts.entries()) {
        counted += 1;
        const box = {
          left: a.left + TOUCH,
          right: a.right - TOUCH,
          top: a.top + TOUCH,
          bottom: a.bottom - TOUCH,
        };
        for (const { role, pieces } of lines)
          if (pieces.some((piece) => runsThrough(piece, box)))
            wrong.push(`${name}: ${role} through ${a.role} “${a.text}”`);
        for (const b of texts.slice(k + 1))
          if (
            (a.name === undefined || a.name !== b.name || a.place !== b.place || a.value !== b.value) &&
            Math.min(a.right, b.right) - Math.max(a.left, b.left) > TOUCH &&
            Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > TOUCH
          )
            wrong.push(`${name}: ${a.role} “${a.text}” on ${b.role} “${b.text}”`);
      }
    }
    speak('en');
    expect(counted).toBeGreaterThan(2000);
    expect(wrong).toEqual([]);
  },
);

test('words stand beside an outline where there is room: no door’s edge is broken by the values of its diagonals', () => {
  const broken: string[] = [];
  let counted = 0;
  for (const { doors, units } of [...plans, ...more])
    for (const door of doors.filter(({ door: name }) => name.endsWith('-1'))) {
      const figure = layOut(doorSetup(door, { stage: 'glue' }, units, { hinge: 'right' }), ROOMS.small);
      for (const stroke of figure.strokes) {
        if (stroke.kind !== 'path' || !/^(stile|rail)-/.test(stroke.role)) continue;
        counted += 1;
        if (stroke.gapped !== undefined) broken.push(`${door.door} ${stroke.role}`);
      }
    }
  expect(counted).toBeGreaterThan(40);
  expect(broken).toEqual([]);
});

test('the name of a slender door is read upwards and is as high as the type of its drawing', () => {
  for (const mark of ['BROOM-1', 'SLIM-1']) {
    const plan = [...plans, ...more].find(({ doors }) => doors.some(({ door }) => door === mark));
    const door = plan?.doors.find((each) => each.door === mark);
    if (door === undefined) throw new Error(`no ${mark}`);
    const figure = layOut(doorView(door, 'in', 'built', 'left'), SLENDER);
    const name = textsOf(figure).find(({ role }) => role === 'door-name');
    expect(name?.turn, mark).toBe(90);
    expect(name?.size, mark).toBeGreaterThanOrEqual(18);
  }
});
