import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Dimension, Point, Shape } from '#core/drawing/model.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { PlanDoor, PlanPart, PlanStage } from '#core/plan/plan.ts';
import { isShortPart } from '#core/plan/short-part.ts';
import { stageOf, stagesOf } from '#core/plan/stage-of.ts';
import { kindOf } from '#core/stages/stage-id.ts';
import { factsOf, type StageKind } from '#core/stages/table.ts';
import { readStep, STEPS } from '#core/settable/step.ts';
import { settableDoor } from '#core/settable/settable-door.ts';
import { doorSetup } from '#core/views/door-setup.ts';
import { drawn } from '#core/views/drawn.ts';
import { layOut } from '#core/drawing/layout.ts';
import { setupView } from '#core/views/setup-view.ts';
import { speak } from '#core/words/say.ts';
import { randomDoor, ways } from '../../assembly/random-door.ts';
import type { LooseStage } from '../../loose-plan.ts';
import { samples } from '../../samples.ts';
import { areasOf, distanceTo, flat, isInside } from './flat.ts';

const KINDS: readonly StageKind[] = [
  'mill',
  'bead',
  'slot',
  'raise',
  'mortise',
  'pare',
  'clean',
  'haunch',
  'finish',
  'dryfit',
  'glue',
];

/** A stage of a part, or of the door where there is no part, as it is drawn at one of its places. */
interface Drawn {
  readonly where: string;
  readonly kind: StageKind;
  readonly part?: PlanPart;
  readonly stage: PlanStage;
  /** What is set, at the place drawn too. */
  readonly settings: LooseStage['settings'];
  readonly shapes: readonly Shape[];
}

function drawnOf(door: PlanDoor): Drawn[] {
  const ofParts = door.parts.flatMap((part) =>
    part.stages.flatMap((stage): Drawn[] => {
      const places: readonly (NonNullable<LooseStage['places']>[number] | undefined)[] = stage.places ?? [
        undefined,
      ];
      return places.map((place) => ({
        where: `${part.part} ${stage.stage} ${place?.at ?? ''}`,
        kind: kindFor(stage),
        part,
        stage,
        settings: { ...stage.settings, ...place?.settings },
        shapes: setupView(part, stage, 'in', stage.places?.find(({ at }) => at === place?.at)?.at).shapes,
      }));
    }),
  );
  const ofDoor = door.stages.map((stage) => ({
    where: stage.stage,
    kind: kindFor(stage),
    stage,
    settings: stage.settings,
    shapes: doorSetup(door, stage, 'in').shapes,
  }));
  return [...ofParts, ...ofDoor].filter(({ kind }) => KINDS.includes(kind));
}

function kindFor({ stage }: PlanStage): StageKind {
  const kind = kindOf(stage);
  if (kind === null) throw new Error(`no kind has the stage ${stage}`);
  return kind;
}

/** Random doors in both ways of each cut, exact and as machines are set, drawing by drawing. */
function everyDrawing(times: number, look: (each: Drawn) => void): void {
  const step = readStep(STEPS.in[0], 'in');
  if (step === null) throw new Error('no step');
  fc.assert(
    fc.property(randomDoor, ways, (fields, inWays) => {
      const planned = planFile({ format: 1, job: 'x', units: 'in', ways: inWays, doors: [fields] });
      if (!planned.ok) return;
      for (const door of planned.value.doors.flatMap((each) => [each, settableDoor(each, step)]))
        for (const each of drawnOf(door)) look(each);
    }),
    { numRuns: times },
  );
}

const isDimension = (shape: Shape): shape is Dimension => shape.kind === 'dimension';

/** How long a dimension is drawn: level, upright, or from point to point. */
function longOf({ from, to, side }: Dimension): number {
  if (side === 'along') return Math.hypot(to.x - from.x, to.y - from.y);
  return Math.abs(side === 'left' || side === 'right' ? to.y - from.y : to.x - from.x);
}

test('each length that is set at router table, mortiser, bench and clamps is dimensioned by the plan’s value and drawn as long as that', () => {
  const seen = new Set<string>();
  everyDrawing(samples(20, 600), ({ where, kind, settings, shapes }) => {
    const { settings: table, place = {} } = factsOf(kind);
    for (const [name, facts] of Object.entries({ ...table, ...place })) {
      const value = settings[name];
      if (value === undefined || (facts.is !== 'length' && facts.is !== 'real')) continue;
      const own = shapes.filter(isDimension).filter((each) => each.name === name);
      expect(own.length, `${where}: ${name}`).toBeGreaterThan(0);
      for (const each of own) {
        expect(each.value, `${where}: ${name}`).toBe(value);
        if (each.brokenAt !== undefined) continue;
        const off = Math.abs(longOf(each) - drawn(value));
        expect(off, `${where}: ${name} ${value}`).toBeLessThanOrEqual(drawn(value) * 0.005 + 1e-9);
      }
      seen.add(`${kind} ${name}`);
    }
  });
  for (const name of ['bead fillet', 'slot cutterHeight', 'raise tongue', 'mortise fence', 'mortise chisel'])
    expect([...seen]).toContain(name);
});

/** Points along the outline that a cutter leaves, by what is set alone; x from the edge at the bearing, y from the table. */
function finished({ kind, settings }: Drawn): Point[] {
  const of = (name: string) => drawn(settings[name] ?? '');
  const shares = Array.from({ length: 25 }, (_, k) => k / 24);
  switch (kind) {
    case 'bead': {
      const [b, wall] = [of('bead'), of('bead') + of('fillet')];
      return [
        ...shares.map((share) => ({
          x: b * Math.cos((share * Math.PI) / 2) - b,
          y: wall - b * Math.sin((share * Math.PI) / 2),
        })),
        ...shares.map((share) => ({ x: -b, y: share * of('fillet') })),
      ];
    }
    case 'slot': {
      const [wall, g, d] = [of('cutterHeight'), of('width'), of('depth')];
      return [
        ...shares.map((share) => ({ x: -d, y: wall + share * g })),
        // The shank stands where the lower wall ends.
        ...shares.slice(0, -1).flatMap((share) => [wall, wall + g].map((y) => ({ x: -d * (1 - share), y }))),
      ];
    }
    case 'raise': {
      const [band, depth] = [of('band'), of('depth')];
      return [
        ...shares.map((share) => ({ x: -band, y: share * depth })),
        ...shares.map((share) => ({ x: -band * share, y: depth })),
      ];
    }
    default:
      return [];
  }
}

const DATUM = { bead: 'bead', slot: 'depth', raise: 'band' } as const;

test('the cutter in the table has the profile that it leaves: the bead’s quarter round and fillet, the slot, the raised band', () => {
  const counted = { bead: 0, slot: 0, raise: 0 };
  everyDrawing(samples(20, 600), (each) => {
    const { kind, shapes, where } = each;
    if (kind !== 'bead' && kind !== 'slot' && kind !== 'raise') return;
    const [cutter] = areasOf(shapes, /^cutter$/);
    const edge = shapes.filter(isDimension).find(({ name }) => name === DATUM[kind])?.from.x;
    if (cutter === undefined || edge === undefined) throw new Error(`${where}: no cutter`);
    const outline = flat(cutter.path);
    const size = drawn(each.settings[DATUM[kind]] ?? '');
    for (const { x, y } of finished(each))
      expect(distanceTo({ x: edge + x, y }, outline), `${where} at ${x} ${y}`).toBeLessThan(size * 0.005);
    counted[kind] += 1;
  });
  for (const [kind, count] of Object.entries(counted)) expect(count, kind).toBeGreaterThan(2);
});

/** What works on the piece, or holds it: none of these may stand in wood that stays. */
const TOOLS =
  /^(fence|table|cutter|bearing|stop|chisel|chisel-end|guide-block|carrier|above-fence|above-bearing|pin)$/;

test('no tool stands in wood that stays', () => {
  const tools = new Set<string>();
  everyDrawing(samples(6, 200), ({ where, shapes }) => {
    const woods = shapes.flatMap((shape) =>
      shape.kind === 'area' && (shape.fill === 'wood' || shape.fill === 'section')
        ? [{ role: shape.role, corners: flat(shape.path) }]
        : [],
    );
    const taken = shapes.flatMap((shape) =>
      shape.kind === 'area' && shape.fill === 'waste' ? [flat(shape.path)] : [],
    );
    for (const tool of areasOf(shapes, TOOLS)) {
      const corners = flat(tool.path);
      tools.add(tool.role);
      for (const { role, corners: wood } of woods) {
        const staying = gridOver(corners).filter(
          (point) =>
            isInside(point, wood) &&
            isInside(point, corners) &&
            !taken.some((each) => isInside(point, each)) &&
            distanceTo(point, corners) > hair(corners),
        );
        expect(staying, `${where}: ${tool.role} in ${role}`).toEqual([]);
      }
    }
  });
  expect([...tools].toSorted()).toEqual(
    [
      'above-bearing',
      'above-fence',
      'bearing',
      'carrier',
      'chisel',
      'chisel-end',
      'cutter',
      'fence',
      'guide-block',
      'pin',
      'stop',
      'table',
    ].toSorted(),
  );
});

/** The box that corners lie in. */
function boxOf(corners: readonly Point[]) {
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

/** Points all over the box of a closed run of corners. */
function gridOver(corners: readonly Point[]): Point[] {
  const { left, right, low, high } = boxOf(corners);
  const grid = Array.from({ length: 24 }, (_, k) => (k + 0.5) / 24);
  return grid.flatMap((across) =>
    grid.map((up) => ({ x: left + across * (right - left), y: low + up * (high - low) })),
  );
}

/** A hundredth of a tool’s smaller side: it may touch what stays. */
function hair(corners: readonly Point[]): number {
  const { left, right, low, high } = boxOf(corners);
  return 0.01 * Math.min(right - left, high - low);
}

test('on the router table the piece is fed against the cutter’s turning, never between cutter and fence; an arch has a pin and no fence, an arch and a short piece a carrier', () => {
  const counted = { fence: 0, pin: 0, carrier: 0, short: 0 };
  everyDrawing(samples(20, 300), ({ kind, part, shapes, where }) => {
    if ((kind !== 'bead' && kind !== 'slot' && kind !== 'raise') || part === undefined) return;
    const [feed] = areasOf(shapes, /^feed$/);
    const [turns] = areasOf(shapes, /^turns$/);
    const [bearing] = areasOf(shapes, /^above-bearing$/);
    const [piece] = areasOf(shapes, /^above-piece$/);
    const [turn] = turns?.path.runs ?? [];
    if (feed === undefined || turn?.kind !== 'arc' || bearing === undefined || piece === undefined)
      throw new Error(`${where}: no feed`);
    // Anticlockwise about its centre the side toward a piece at the left comes down; the piece goes up.
    expect(turn.clockwise, where).toBe(false);
    expect((feed.path.runs[0]?.to.y ?? 0) - feed.path.start.y, where).toBeGreaterThan(0);
    const middle = flat(bearing.path);
    const centre = (Math.min(...middle.map(({ x }) => x)) + Math.max(...middle.map(({ x }) => x))) / 2;
    expect(turn.centre.x, where).toBeCloseTo(centre, 9);
    expect(flat(piece.path).reduce((sum, { x }) => sum + x, 0) / flat(piece.path).length, where).toBeLessThan(
      centre,
    );
    const arched = stageOf(part, 'arch') !== undefined;
    const round = arched || stageOf(part, 'cutout') !== undefined;
    const fences = areasOf(shapes, /fence$/);
    expect(fences.length > 0, where).toBe(!round);
    // The fence stands beyond the cutter's axis or flush with the bearing: the piece is never between the two.
    for (const { path } of fences)
      for (const { x } of flat(path))
        expect(x, where).toBeGreaterThan(
          turn.centre.x - 2 * (turn.centre.x - Math.min(...middle.map((each) => each.x))),
        );
    expect(areasOf(shapes, /^pin$/).length, where).toBe(round ? 1 : 0);
    const carried = round || isShortPart(part, 'in');
    expect(areasOf(shapes, /^carrier$/).length, where).toBe(carried ? 1 : 0);
    // The hands are on the far side of the carrier, clear of the rail at the cutter.
    const handles = areasOf(shapes, /^above-handle$/);
    expect(handles.length, where).toBe(carried ? 2 : 0);
    const near = Math.min(...flat(piece.path).map(({ x }) => x));
    for (const { path } of handles) for (const { x } of flat(path)) expect(x, where).toBeLessThan(near);
    counted[round ? 'pin' : 'fence'] += 1;
    if (carried) counted.carrier += 1;
    if (carried && !round) counted.short += 1;
  });
  for (const [what, count] of Object.entries(counted)) expect(count, what).toBeGreaterThan(2);
});

test('paring to the line shows each miter of a part and each length whose bead is gone', () => {
  let counted = 0;
  everyDrawing(samples(15, 200), ({ kind, part, shapes, where }) => {
    if (kind !== 'clean' || part === undefined) return;
    const mitres = areasOf(shapes, /^pare-mitre$/);
    const lengths = areasOf(shapes, /^pare-length$/).map(({ path }) =>
      Math.abs((path.runs[0]?.to.x ?? 0) - path.start.x),
    );
    if (part.part.startsWith('stile')) {
      const cuts = stagesOf(part, 'mitre-end');
      expect(mitres.length, where).toBe(cuts.length);
      expect(lengths.length, where).toBe(cuts.length / 2 + 1);
      // Those at the ends are as long as their miters' own shoulder lines say.
      const ends = cuts.slice(0, 2).map(({ settings }) => drawn(settings.shoulderLine));
      expect(lengths[0], where).toBeCloseTo(ends[0] ?? NaN, 6);
      expect(lengths.at(-1), where).toBeCloseTo(ends[1] ?? NaN, 6);
    } else expect(mitres.length, where).toBe(part.part.startsWith('rail-mid') ? 4 : 2);
    expect(areasOf(shapes, /^guide-block$/)).toHaveLength(1);
    counted += 1;
  });
  expect(counted).toBeGreaterThan(20);
});

test.each([
  ['en', /bead/i],
  ['de', /stab/i],
] as const)('in %s no drawing of a door without a bead speaks of one', (language, word) => {
  const texts = (bead: string) => {
    const planned = planFile({
      format: 1,
      job: 'x',
      units: 'in',
      doors: [
        {
          mark: 'A',
          opening: { width: '16', height: '40' },
          bead,
          arch: { rise: '2', flat: '1' },
          midRails: [{ width: '2 1/2', centre: '14' }],
        },
      ],
    });
    const door = planned.ok ? planned.value.doors[0] : undefined;
    if (door === undefined) throw new Error('no door');
    const drawings = [
      ...door.parts.flatMap((part) =>
        part.stages.flatMap((stage) =>
          (stage.places ?? [{ at: undefined }]).map(({ at }) => setupView(part, stage, 'in', at)),
        ),
      ),
      ...door.stages.map((stage) => doorSetup(door, stage, 'in')),
    ];
    return drawings.flatMap((drawing) =>
      layOut(drawing, { width: 1200, height: 800, text: 12 }).strokes.flatMap((stroke) =>
        stroke.kind === 'text' ? [stroke.text] : [],
      ),
    );
  };
  speak(language);
  const [plain, beaded] = [texts('0'), texts('1/4')];
  speak('en');
  expect(plain.filter((text) => word.test(text))).toEqual([]);
  expect(beaded.some((text) => word.test(text))).toBe(true);
});
