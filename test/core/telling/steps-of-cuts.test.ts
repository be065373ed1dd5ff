import { afterEach, describe, expect, test } from 'vitest';
import type { Units } from '#core/length/units.ts';
import type { PlanDoor, PlanPart, PlanStage, Settings, SettingValue } from '#core/plan/plan.ts';
import { settingFacts } from '#core/plan/set-or-follows.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { paredAt } from '#core/settable/pared-at.ts';
import { settableDoor } from '#core/settable/settable-door.ts';
import { paperStep } from '#core/settable/step.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import { kindOf } from '#core/stages/stage-id.ts';
import type { StepsKey, StepTable } from '#core/stages/steps.ts';
import { factsOf, STAGE_KINDS, type StageKind } from '#core/stages/table.ts';
import { howTo } from '#core/telling/how-to.ts';
import { en } from '#core/words/en.ts';
import { speak } from '#core/words/say.ts';
import { tableOf } from '#core/words/languages.ts';
import { everyStageJob } from '../../e2e/every-stage-job.ts';

/** A line is read at 34 px: so many characters are three lines of a screen of 1280. */
const LONGEST = 140;

/** Kinds without steps, and why. */
const WITHOUT: Readonly<Partial<Record<StageKind, string>>> = {
  finish: 'all there is to it stands on its set-up: nothing.finish',
};

/** What is set and stands in no step, and why. */
const UNTOLD: Readonly<Partial<Record<StageKind, readonly string[]>>> = {
  // A survey's amounts stand on the set-up in place of these.
  trim: ['trimEachSide', 'trimLeft', 'trimRight', 'trimEachEnd', 'trimBottom', 'trimTop'],
};

function doorOf(units: Units, more: object = {}): PlanDoor {
  const plan = planFile({ ...(everyStageJob(units) as Record<string, unknown>), ...more });
  if (!plan.ok || plan.value.doors[0] === undefined) throw new Error(JSON.stringify(plan));
  return settableDoor(plan.value.doors[0], paperStep(units));
}

const lined = (value: SettingValue) => `<${value}>`;

interface Told {
  readonly part: PlanPart | undefined;
  readonly stage: PlanStage;
  readonly settings: Settings;
  readonly lines: readonly string[];
}

/** Every stage of a door at every place, its steps with the numbers in angle brackets. */
function told(units: Units, door = doorOf(units)): Told[] {
  const step = paperStep(units);
  return [...door.parts, undefined].flatMap((part) =>
    (part?.stages ?? door.stages).flatMap((stage) =>
      (stage.places ?? [undefined]).map((place) => ({
        part,
        stage,
        settings: { ...stage.settings, ...place?.settings },
        lines: howTo(stage, {
          ...(part === undefined ? {} : { part }),
          ...(place === undefined ? {} : { place: place.at }),
          step,
          read: lined,
        }),
      })),
    ),
  );
}

function linesOf(part: string, stage: string, door = doorOf('in')): readonly string[] {
  const found = told('in', door).find((each) => each.part?.part === part && each.stage.stage === stage);
  if (found === undefined) throw new Error(`${part} has no ${stage}`);
  return found.lines;
}

/** Every family of steps that a kind tells on some part. */
function familiesOf(steps: StepTable | undefined): readonly StepsKey[] {
  if (steps === undefined) return [];
  const { lacking, ...tables } = steps;
  return [...Object.values(tables), lacking?.steps ?? []].flat();
}

afterEach(() => {
  speak('en');
});

test('every kind of stage has steps in English and in German but those that are said here to need none', () => {
  const { words } = tableOf('de');
  for (const kind of STAGE_KINDS) {
    const { steps } = factsOf(kind);
    expect(steps === undefined, kind).toBe(kind in WITHOUT);
    for (const family of familiesOf(steps)) {
      expect(Object.hasOwn(en, `${family}.1`), family).toBe(true);
      expect(Object.hasOwn(words, `${family}.1`), family).toBe(true);
    }
  }
});

test('no step is written that no stage tells', () => {
  const used = new Set<string>(STAGE_KINDS.flatMap((kind) => familiesOf(factsOf(kind).steps)));
  const idle = Object.keys(en)
    .filter((key) => key.startsWith('how.'))
    .filter((key) => !used.has(key.replace(/\.\d+$/, '')));
  expect(idle).toEqual([]);
});

describe.each(['in', 'mm'] as const)('of a door with every stage in %s', (units) => {
  test.each(['rip', 'notch'] as const)(
    'each number that is set stands in the steps, as it is set; with the way %s',
    (strip) => {
      const missing: string[] = [];
      for (const { part, stage, settings, lines } of told(units, doorOf(units, { ways: { strip } }))) {
        const kind = kindOf(stage.stage);
        if (kind === null || kind in WITHOUT) continue;
        for (const [name, value] of Object.entries(settings)) {
          const facts = settingFacts(stage.stage, name);
          if (facts === null || facts.follows === true || Array.isArray(facts.is) || value === '0') continue;
          if (UNTOLD[kind]?.includes(name) === true) continue;
          const set = paredAt(stage.stage, name, value, paperStep(units))?.set ?? value;
          const text = lines.join(' ').replaceAll('\u00a0', ' ');
          if (!text.includes(facts.is === 'angle' ? `${set}°` : `<${set}>`))
            missing.push(`${part?.part ?? 'door'} ${stage.stage} ${name} ${set}`);
        }
      }
      expect(missing).toEqual([]);
    },
  );

  test.each(['en', 'de', 'en-GB'] as const)(
    'no line in %s leaves a figure open or is too long to be read at once',
    (language) => {
      speak(language);
      const lines = (['rip', 'notch'] as const).flatMap((strip) =>
        told(units, doorOf(units, { ways: { strip } })).flatMap((each) => each.lines),
      );
      expect(lines.length).toBeGreaterThan(400);
      expect(lines.filter((line) => /[{}]/.test(line))).toEqual([]);
      // A number in brackets is as long as one with its unit.
      expect(lines.filter((line) => line.length > LONGEST)).toEqual([]);
    },
  );

  test('no stage tells a step twice', () => {
    for (const { stage, lines } of told(units)) expect(new Set(lines).size, stage.stage).toBe(lines.length);
  });
});

test('a stile’s ends are told apart: each cut names the end that goes to the stop block, with that end’s numbers', () => {
  for (const part of ['stile-left', 'stile-right']) {
    const [bottom, top] = [linesOf(part, 'mitre-bottom'), linesOf(part, 'mitre-top')];
    // Sight edges by the worked example: 1/2 + 2 3/4 and 1/2 + 3 3/4, each set 1/64 nearer its own end.
    expect(bottom).toEqual([
      'Blade at 45°, <1/4> high. Stop block to the far side of the blade, at the table: <3\u00a015/64>.',
      'Prove it on a test piece of the same thickness: the cut is <1/4> deep, at 45° to the edge.',
      'Mark the line on the sight edge, <3\u00a01/4> from the BOTTOM end: the cut stays <1/64> nearer that end, for the chisel.',
      'Sight edge down, BOTTOM end against the stop block; the blade leans toward the stop block.',
      'One cut at this end alone: do not turn the stile end for end. The other end is set otherwise.',
    ]);
    expect(top[0]).toContain('<4\u00a015/64>');
    expect(top[2]).toContain('<4\u00a01/4> from the TOP end');
    expect(top[3]).toContain('TOP end against the stop block');
    const told = [...bottom, ...top];
    expect(told.filter((line) => line.includes('BOTTOM') && line.includes('TOP'))).toEqual([]);
  }
});

test('a mid rail’s lower miter is told to be measured from the top end and to hang on the stile’s length, its upper one from the bottom', () => {
  // Stile 42 1/2 + 2 · 1/2; 1/2 + 42 1/2 − 12 + 1 1/2 = 32 1/2 from the top; 1/2 + 12 + 1 1/2 = 14 from the bottom.
  const lower = linesOf('stile-left', 'mitre-mid-1-lower');
  expect(lower[0]).toBe(
    'Below mid rail 1, yet from the TOP end: measure the stile first. If it is not <43\u00a01/2> long, this cut is off by as much.',
  );
  expect(lower[3]).toContain('<32\u00a01/2> from the TOP end');
  expect(lower[4]).toContain('TOP end against the stop block');
  expect(lower.join(' ')).not.toContain('BOTTOM');
  const upper = linesOf('stile-left', 'mitre-mid-1-upper');
  expect(upper[3]).toContain('<14> from the BOTTOM end');
  expect(upper.join(' ')).not.toContain('TOP');
});

test.each([
  ['en', /measured from the TOP end.*longer or shorter/],
  ['en-GB', /measured from the TOP end.*longer or shorter/],
  ['de', /Gemessen ab Ende OBEN.*länger oder kürzer/],
] as const)(
  'the reason of a mid rail’s lower miter in %s says so too, that of its upper one does not',
  (why, says) => {
    const plan = planFile(everyStageJob('in'), { why });
    if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
    const stages = plan.value.doors[0]?.parts.find(({ part }) => part === 'stile-left')?.stages ?? [];
    const reason = (name: string) => stages.find(({ stage }) => stage === name)?.why?.sightEdge?.reason;
    expect(reason('mitre-mid-1-lower')).toMatch(says);
    expect(reason('mitre-mid-1-upper')).toMatch(/= 14$/);
  },
);

test('the notches of the ends begin at that end’s own shoulder line, that of a mid rail lies between two lines', () => {
  const door = doorOf('in', { ways: { strip: 'notch' } });
  expect(linesOf('stile-left', 'notch-bottom', door).slice(1, 3)).toEqual([
    'Sight edge down, BOTTOM end to the stop block.',
    'First the cut at the line: stop block to the far side of the blade <3>.',
  ]);
  expect(linesOf('stile-left', 'notch-top', door)[2]).toContain('<4>');
  expect(linesOf('stile-left', 'notch-top', door)[1]).toContain('TOP end');
  expect(linesOf('stile-left', 'notch-mid-1', door).slice(1, 4)).toEqual([
    'Sight edge down, BOTTOM end to the stop block.',
    'First cut: stop block to the near side of the blade <11\u00a01/4>. Last cut: to its far side <13\u00a03/4>.',
    'Crosscuts side by side between them, none past the lines: the notch is <2\u00a01/2> long.',
  ]);
});

test('at the mortiser each stile’s ends go to their own stop blocks and the stile is never turned', () => {
  const found = (part: string) =>
    told('in')
      .filter((each) => each.part?.part === part && each.stage.stage === 'mortise')
      .map(({ lines }) => lines.slice(-2).join(' '));
  expect(found('stile-left').map((line) => /against the (\w+) stop/.exec(line)?.[1])).toEqual([
    'left',
    'left',
    'right',
  ]);
  expect(found('stile-right').map((line) => /against the (\w+) stop/.exec(line)?.[1])).toEqual([
    'right',
    'right',
    'left',
  ]);
  expect(found('stile-left')[2]).toContain('measured from the TOP end');
  expect(linesOf('stile-left', 'mortise').join(' ')).toContain('never turn it');
});

test('an arched rail’s steps are others than a straight one’s: carrier, flats, and its groove by the router', () => {
  for (const stage of ['bead', 'shoulder', 'cheek', 'mitre', 'tenon']) {
    const [arched, straight] = [
      linesOf('rail-top', stage).join(' '),
      linesOf('rail-bottom', stage).join(' '),
    ];
    expect(arched, stage).toContain('carrier');
    expect(straight, stage).not.toMatch(/carrier|flats/);
  }
  const routed = doorOf('in', { ways: { groove: 'router' } });
  expect(linesOf('rail-top', 'slot', routed).join(' ')).toContain('flat, arch, flat');
  expect(linesOf('rail-bottom', 'slot', routed).join(' ')).not.toContain('arch');
});

test('the haunch stays where there is one, and no word is said of it where the groove leaves none', () => {
  expect(linesOf('rail-bottom', 'tenon').join(' ')).toContain('The haunch stays there, <3/32> long');
  const bead = doorOf('in', {
    doors: [
      {
        mark: 'DEEP',
        thickness: '7/8',
        bead: '1/4',
        groove: { width: '1/4', depth: '1/4' },
        opening: { width: '16', height: '30' },
      },
    ],
  });
  expect(linesOf('rail-bottom', 'tenon', bead).join(' ')).not.toContain('haunch stays');
});

test('at milling the wood is told once for the part in hand: stile, rail, arched rail, panel', () => {
  const first = Object.fromEntries(
    doorOf('in').parts.map((part) => [part.part, linesOf(part.part, 'mill')[0] ?? '']),
  );
  for (const [part, line] of Object.entries(first)) {
    expect(line, part).toMatch(/^Wood: /);
    expect(linesOf(part, 'mill').filter((each) => each.startsWith('Wood'))).toHaveLength(1);
  }
  // Two stiles marked alike are two left ones.
  const marked = 'seen from the front, a left stile’s at its right, a right stile’s at its left.';
  for (const part of ['stile-left', 'stile-right'])
    expect(linesOf(part, 'mill').at(-1)).toBe(`Mark FRONT, TOP and sight edge: ${marked}`);
  expect(first['stile-left']).toMatch(/straight grain.*mortise/);
  expect(first['rail-bottom']).toMatch(/straight grain.*tenons/);
  expect(first['rail-top']).toMatch(/sweeps with the arch/);
  expect(first['panel-1']).not.toMatch(/arch/);
  expect(first['panel-2']).toMatch(/figure rising into the arch/);
});

test('the hand-push fit is said in words at the cheek: a hair at each face', () => {
  expect(linesOf('rail-bottom', 'cheek')[2]).toBe(
    'A hand-push fit: the blade up to ≈\u00a00.004\u00a0in higher, never lower; over both faces ≈\u00a00.008\u00a0in.',
  );
  const metric = told('mm').find(({ stage }) => stage.stage === 'cheek');
  expect(metric?.lines[2]).toBe(
    'A hand-push fit: the blade up to 0.1\u00a0mm higher, never lower; over both faces 0.2\u00a0mm.',
  );
});

test('a tenon wider than one should be is told what to do by hand, and just where the plan advises it', () => {
  const door = doorOf('in', {
    doors: [
      { mark: 'WIDE', thickness: '7/8', bottomRail: { width: '7' }, opening: { width: '20', height: '40' } },
    ],
  });
  const advised = door.notes.filter(({ id }) => id === 'tenon-wide').map(({ figures }) => figures.part);
  expect(advised).toHaveLength(1);
  const wide = told('in', door)
    .filter(({ lines }) => lines.some((line) => line.startsWith('A wide tenon')))
    .map(({ part, stage }) => `${part?.part ?? ''} ${stage.stage}`);
  expect(wide).toEqual(['rail-bottom tenon']);
});

test('the rip on the band saw has no line on its fence: the stop block stands past the teeth', () => {
  const plan = planFile(everyStageJob('in'), {
    profile: { ...builtInProfile('in'), stripStation: 'band-saw' },
  });
  if (!plan.ok || plan.value.doors[0] === undefined) throw new Error(JSON.stringify(plan));
  const strips = told('in', settableDoor(plan.value.doors[0], paperStep('in'))).filter(
    ({ stage }) => stage.stage === 'strip',
  );
  expect(strips).toHaveLength(4);
  for (const { stage, settings, lines } of strips) {
    expect(stage.station).toBe('band-saw');
    expect(settings).not.toHaveProperty('reach');
    expect(lines.join(' ')).toContain('past the teeth');
    expect(lines.join(' ')).not.toMatch(/arbor|past the line|[{}]/);
  }
});
