import { type LooseStage, looseStage } from '../../loose-plan.ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { trimOf } from '#core/plan/trim-of.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { PlanDoor, PlanPart, Settings } from '#core/plan/plan.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import { inMillimetres, MM } from '../../assembly/in-millimetres.ts';
import { randomDoor } from '../../assembly/random-door.ts';
import { compared, minus, multiplied, plus, printed, ratio } from '../exact.ts';

type Fields = Parameters<Parameters<typeof randomDoor.map>[0]>[0];

const partOf = (door: PlanDoor, name: string): PlanPart => {
  const found = door.parts.find(({ part }) => part === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};
const stageOf = (part: PlanPart, ...names: string[]) =>
  names.map((name) => looseStage(part, name)).find((found) => found !== undefined);
const set = (part: PlanPart, ...names: string[]): Settings => {
  const found = stageOf(part, ...names);
  if (found === undefined) throw new Error(`${part.part} has no ${names.join(' or ')}`);
  return found.settings;
};
const railsOf = (door: PlanDoor) => door.parts.filter(({ part }) => part.startsWith('rail'));
const midsOf = (door: PlanDoor) => door.parts.filter(({ part }) => part.startsWith('rail-mid'));

/** A law, tried on every random door that can be made. */
function holds(law: (door: PlanDoor, fields: Fields) => void, numRuns = 60): void {
  let made = 0;
  fc.assert(
    fc.property(randomDoor, (fields) => {
      const planned = planFile({ format: 1, job: 'x', units: 'in', ways: { strip: 'rip' }, doors: [fields] });
      const door = planned.ok ? planned.value.doors[0] : undefined;
      if (door === undefined) return;
      made += 1;
      law(door, fields);
    }),
    { numRuns },
  );
  expect(made).toBeGreaterThan(numRuns / 5);
}

test('a rail is from shoulder line to shoulder line, and a tenon more at each end', () => {
  holds((door, { bead }) => {
    const between = plus(ratio(door.values.sightWidth), multiplied(ratio(bead), 2));
    expect(door.values.shoulderToShoulder).toBe(printed(between));
    for (const rail of railsOf(door))
      expect(printed(minus(ratio(rail.length), multiplied(ratio(set(rail, 'shoulder').stop), 2)))).toBe(
        printed(between),
      );
    for (const name of ['stile-left', 'stile-right']) {
      const stile = partOf(door, name);
      if (ratio(bead).n > 0n)
        expect(printed(plus(ratio(set(stile, 'strip').fence), ratio(bead)))).toBe(stile.width);
    }
  });
});

test('rails, sight heights and trims add up to the stiles without their horns', () => {
  holds((door, { horn, opening, oversize }) => {
    const { values } = door;
    const built = minus(ratio(partOf(door, 'stile-left').length), multiplied(ratio(horn), 2));
    const heights = [...railsOf(door).map(({ width }) => ratio(width)), ...values.sightHeights.map(ratio)];
    expect(printed(plus(...heights))).toBe(printed(built));
    const { left, right, bottom, top } = trimOf(values);
    expect(printed(plus(...[values.finishedHeight, bottom, top].map(ratio)))).toBe(printed(built));
    expect(printed(plus(...[values.finishedWidth, left, right].map(ratio)))).toBe(
      printed(plus(ratio(opening.width), ratio(oversize.width))),
    );
    expect([values.trimEachSide, values.trimEachEnd]).toEqual([
      left === right ? left : undefined,
      bottom === top ? bottom : undefined,
    ]);
    const across = [values.sightWidth, partOf(door, 'stile-left').width, partOf(door, 'stile-right').width];
    expect(printed(plus(...across.map(ratio)))).toBe(
      printed(plus(ratio(opening.width), ratio(oversize.width))),
    );
  });
});

test('every mortise lies within its stile, apart from the others, and leaves an eighth behind it once trimmed', () => {
  holds((door) => {
    for (const name of ['stile-left', 'stile-right']) {
      const stile = partOf(door, name);
      const [mortise, length] = [stageOf(stile, 'mortise'), ratio(stile.length)];
      const places = (mortise?.places ?? []).map(({ at, settings }) => {
        const [start, stop] = [ratio(settings.start), ratio(settings.stop)];
        return at === 'top' ? [minus(length, stop), minus(length, start)] : [start, stop];
      });
      expect(places).toHaveLength(2 + midsOf(door).length);
      const edges = [ratio('0'), ...places.flat(), length];
      for (const [k, edge] of edges.entries()) {
        const next = edges[k + 1];
        if (next !== undefined) expect(compared(edge, next), `${name} ${k}`).toBeLessThan(0);
      }
      const { depthFromEdge, depthFromGroove, chisel, fence } = set(stile, 'mortise');
      const behind = minus(
        ratio(stile.width),
        ratio(depthFromEdge),
        ratio(trimOf(door.values)[name === 'stile-left' ? 'left' : 'right']),
      );
      expect(compared(behind, ratio('1/8'))).toBeGreaterThanOrEqual(0);
      expect(printed(plus(ratio(depthFromGroove), ratio(set(stile, 'groove').depth)))).toBe(depthFromEdge);
      expect(printed(plus(multiplied(ratio(fence), 2), ratio(chisel)))).toBe(stile.thickness);
    }
  });
});

test('every tenon goes into its mortise with the clearance and the end play that were asked for', () => {
  holds((door, { bead, mortise: fit }) => {
    const stile = partOf(door, 'stile-left');
    const mortise = stageOf(stile, 'mortise');
    for (const rail of railsOf(door)) {
      const at = rail.part.replace('rail-', '');
      const place = mortise?.places?.find((each) => each.at === at)?.settings;
      const [length, tenon] = [ratio(place?.length), set(rail, 'tenon')];
      expect(printed(minus(length, ratio(tenon.width)))).toBe(printed(multiplied(ratio(fit.endPlay), 2)));
      expect(printed(minus(ratio(place?.stop), ratio(place?.start)))).toBe(place?.length);
      const chisel = ratio(mortise?.settings.chisel);
      const plunges = Number(place?.plunges);
      expect(compared(multiplied(chisel, plunges), length)).toBeGreaterThanOrEqual(0);
      expect(compared(multiplied(chisel, plunges - 1), length)).toBeLessThan(0);
      const room = minus(
        ratio(mortise?.settings.depthFromEdge),
        ratio(bead),
        ratio(set(rail, 'shoulder').stop),
      );
      expect(printed(room)).toBe(printed(ratio(fit.clearance)));
      const edges = [tenon.outerHeight ?? tenon.innerHeight, tenon.width, tenon.innerHeight].map((each) =>
        ratio(each),
      );
      expect(printed(plus(...edges))).toBe(rail.width);
      const { height, thickness } = set(rail, 'cheek');
      expect(printed(plus(multiplied(ratio(height), 2), ratio(thickness)))).toBe(rail.thickness);
    }
  });
});

test('every panel’s edge lies between sight edge and groove floor, its clearance short of the floor', () => {
  holds((door, { groove, panel: { clearance } }) => {
    const panels = door.parts.filter(({ part }) => part.startsWith('panel'));
    expect(panels).toHaveLength(door.values.sightHeights.length);
    for (const [k, panel] of panels.entries()) {
      const twice = minus(ratio(panel.width), ratio(door.values.sightWidth));
      const hold = multiplied(twice, { n: 1n, d: 2n });
      expect(hold.n > 0n).toBe(true);
      expect(printed(plus(hold, ratio(clearance)))).toBe(printed(ratio(groove.depth)));
      const side = stageOf(panel, 'cutout')?.settings.sideHeight ?? panel.length;
      expect(printed(minus(ratio(side), twice))).toBe(door.values.sightHeights[k]);
    }
  });
});

test('an arch spans what its flats leave, is at most a semicircle, and its panel follows it', () => {
  let [arched, semicircles] = [0, 0];
  holds((door, { arch: asked }) => {
    const top = partOf(door, 'rail-top');
    const arch = stageOf(top, 'arch')?.settings;
    expect(arch !== undefined).toBe(asked !== null);
    if (arch === undefined || asked === null) return;
    arched += 1;
    const [chord, radius, pivot, rise] = [arch.chord, arch.radius, arch.pivot, arch.rise].map((each) =>
      ratio(each),
    );
    if (chord === undefined || radius === undefined || pivot === undefined || rise === undefined)
      throw new Error('no arch');
    expect(printed(plus(chord, multiplied(ratio(asked.flat), 2)))).toBe(door.values.sightWidth);
    expect(printed(plus(pivot, rise))).toBe(printed(radius));
    // Pythagoras in the triangle of pivot, half chord and radius.
    const half = multiplied(chord, { n: 1n, d: 2n });
    expect(printed(plus(multiplied(half, half), multiplied(pivot, pivot)))).toBe(
      printed(multiplied(radius, radius)),
    );
    expect(compared(multiplied(rise, 2), chord)).toBeLessThanOrEqual(0);
    if (pivot.n === 0n) semicircles += 1;
    const cutout = set(
      door.parts.find(
        ({ part }) =>
          part.startsWith('panel') &&
          (part === 'panel' || part === `panel-${door.values.sightHeights.length}`),
      ) ?? top,
      'cutout',
    );
    const hold = minus(ratio(cutout.radius), radius);
    expect(printed(minus(ratio(cutout.pivot), pivot))).toBe(printed(hold));
    expect(printed(plus(ratio(door.values.sightWidth), multiplied(hold, 2)))).toBe(cutout.width);
  }, 120);
  expect(arched).toBeGreaterThan(10);
  expect(semicircles).toBeGreaterThan(2);
});

const OF_THE_PIECE = new Set(['faceUp', 'endStop']);

test('left and right stiles are mirror images: alike in every setting but how the piece lies for the strip and at the mortiser', () => {
  holds((door) => {
    const faces = (name: string) =>
      stageOf(partOf(door, name), 'strip')?.places?.map(({ settings }) => settings.faceUp);
    const plain = (name: string) =>
      partOf(door, name).stages.map(({ places = [], ...stage }) => ({
        ...stage,
        places: places.map(({ at, settings }) => ({
          at,
          settings: Object.fromEntries(Object.entries(settings).filter(([each]) => !OF_THE_PIECE.has(each))),
        })),
      }));
    expect(plain('stile-left')).toEqual(plain('stile-right'));
    expect(faces('stile-right')).toEqual(faces('stile-left')?.toReversed());
    const stops = (name: string) =>
      (stageOf(partOf(door, name), 'mortise')?.places ?? []).map(({ settings }) => settings.endStop);
    const other = stops('stile-left').map((side) => (side === 'left' ? 'right' : 'left'));
    expect(stops('stile-right')).toEqual(other);
  });
});

test('the hinge side changes nothing in a door whose opening was not surveyed', () => {
  fc.assert(
    fc.property(randomDoor, (fields) => {
      const plan = (hinge: string) =>
        planFile({ format: 1, job: 'x', units: 'in', doors: [{ ...fields, hinge }] });
      expect(plan('right')).toEqual(plan('left'));
    }),
    { numRuns: 30 },
  );
});

test('the order of mid rails in the file makes no difference but to where a fault or note points', () => {
  fc.assert(
    fc.property(randomDoor, (fields) => {
      const plan = (midRails: readonly unknown[], place: (k: number) => number): unknown =>
        JSON.parse(
          JSON.stringify(
            planFile({ format: 1, job: 'x', units: 'in', doors: [{ ...fields, midRails }] }),
          ).replace(/midRails\[(\d+)\]/g, (_, k) => `midRails[${place(Number(k))}]`),
        );
      const last = fields.midRails.length - 1;
      const reversed = plan(fields.midRails.toReversed(), (k) => last - k);
      expect(reversed).toEqual(plan(fields.midRails, (k) => k));
    }),
    { numRuns: 50 },
  );
});

/** The inch shop's tools, called by their millimetres. */
function inchToolsInMillimetres() {
  const profile = builtInProfile('in');
  const convert = (value: (typeof profile.chisels)[number]) => value.mul(127).div(5) as typeof value;
  return {
    ...profile,
    units: 'mm' as const,
    chisels: profile.chisels.map(convert),
    dadoWidths: profile.dadoWidths.map(convert),
    drums: profile.drums.map(convert),
    blade: {
      diameter: convert(profile.blade.diameter),
      greatestHeight: convert(profile.blade.greatestHeight),
      ripHeight: null,
    },
    bearingRadius: convert(profile.bearingRadius),
    slidingFit: convert(profile.slidingFit),
    panelBand: convert(profile.panelBand),
  };
}

/** The blade is raised 1/8 in over the stock in an inch shop and 3 mm in a metric one. */
const OWN_TO_UNITS = new Set(['bladeHeight', 'reach', 'lag', 'plunges', 'tilt']);

test('an inch job and the same in millimetres agree: every length times 25.4 exactly', () => {
  let compared = 0;
  fc.assert(
    fc.property(randomDoor, (fields) => {
      const inch = planFile({ format: 1, job: 'x', units: 'in', doors: [fields] });
      const metric = planFile(
        { format: 1, job: 'x', units: 'mm', doors: [{ ...(inMillimetres(fields) as object), mark: 'A' }] },
        { profile: inchToolsInMillimetres() },
      );
      if (!inch.ok || !metric.ok) return;
      const [one, other] = [inch.value.doors[0], metric.value.doors[0]];
      const pairs = (one?.parts ?? []).flatMap((part, k) =>
        part.stages.flatMap((stage: LooseStage, j) => {
          const same: LooseStage | undefined = other?.parts[k]?.stages[j];
          expect(same?.stage).toBe(stage.stage);
          return [
            [stage.settings, same?.settings] as const,
            ...(stage.places ?? []).map((place, i) => [place.settings, same?.places?.[i]?.settings] as const),
          ];
        }),
      );
      for (const [settings, metricSettings] of pairs)
        for (const [name, value] of Object.entries(settings)) {
          const same = metricSettings?.[name];
          if (OWN_TO_UNITS.has(name)) continue;
          if (typeof value === 'string' && value.includes('.'))
            expect(Number(same) / 25.4).toBeCloseTo(Number(value), 5);
          else if (typeof value === 'string' && /^\d/.test(value)) {
            expect(same, name).toBe(printed(multiplied(ratio(value), MM)));
            compared += 1;
          } else expect(same).toBe(value);
        }
      expect(other?.values.sightHeights).toEqual(
        one?.values.sightHeights.map((each) => printed(multiplied(ratio(each), MM))),
      );
    }),
    { numRuns: 60 },
  );
  expect(compared).toBeGreaterThan(500);
});
