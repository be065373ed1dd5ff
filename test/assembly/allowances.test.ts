import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import type { Allowed, PlanDoor } from '#core/plan/plan.ts';
import { allowWords } from '#core/words/allow.ts';
import { chances } from '../proof/seeded.ts';
import { inFull, samples } from '../samples.ts';
import { inMillimetres } from './in-millimetres.ts';
import { limitsOf, type Ordered, type Practice, settingsOf, whole } from './limits-kept.ts';
import { randomDoor, ways } from './random-door.ts';

/** The fields of a door that its limits hang on, as a job file has them. */
interface Door {
  readonly opening: { readonly width: string; readonly height: string };
  readonly oversize: { readonly width: string; readonly height: string };
  readonly reveal: string | Readonly<Record<'left' | 'right' | 'bottom' | 'top', string>>;
  readonly thickness: string;
  readonly stile: { readonly width: string };
  readonly bottomRail: { readonly width: string };
  readonly topRail: { readonly width: string };
  readonly arch: { readonly rise: string } | null;
  readonly midRails: readonly { readonly width: string; readonly centre: string }[];
  readonly bead: string;
  readonly groove: { readonly width: string; readonly depth: string };
  readonly tenon: { readonly outerSetback: string; readonly innerSetback: string };
  readonly mortise: { readonly endPlay: string };
  readonly horn: string;
}

const PRACTICE: Readonly<Record<'in' | 'mm', Practice>> = {
  in: {
    hair: whole('1/256'),
    thirtySecond: whole('1/32'),
    sixteenth: whole('1/16'),
    eighth: whole('1/8'),
    threeEighths: whole('3/8'),
  },
  mm: {
    hair: whole('1/10'),
    thirtySecond: whole('4/5'),
    sixteenth: whole('3/2'),
    eighth: whole('3'),
    threeEighths: whole('10'),
  },
};
/** Beyond a limit by this much. */
const A_HAIR = { in: whole('1/1024'), mm: whole('1/64') };
const FIT = { in: '1/64', mm: '2/5' };

function ordered(door: Door, units: 'in' | 'mm', chisel: number): Ordered {
  const both = (one: string, other: string) => whole(one) + whole(other);
  const { reveal } = door;
  const widest = (...sides: readonly ('left' | 'right' | 'bottom' | 'top')[]) =>
    typeof reveal === 'string' ? whole(reveal) : Math.max(...sides.map((side) => whole(reveal[side])));
  const halfOversize = whole(door.oversize.width) / 2;
  return {
    width: both(door.opening.width, door.oversize.width),
    height: both(door.opening.height, door.oversize.height),
    trimSide: halfOversize + widest('left', 'right'),
    trimEnd: whole(door.oversize.height) / 2 + widest('bottom', 'top'),
    thickness: whole(door.thickness),
    stile: whole(door.stile.width),
    bottom: whole(door.bottomRail.width),
    crown: whole(door.topRail.width),
    rise: door.arch === null ? 0 : whole(door.arch.rise),
    mids: door.midRails
      .map(({ width, centre }) => ({ width: whole(width), centre: whole(centre) }))
      .sort((a, b) => a.centre - b.centre),
    bead: whole(door.bead),
    groove: whole(door.groove.width),
    depth: whole(door.groove.depth),
    outer: whole(door.tenon.outerSetback),
    inner: whole(door.tenon.innerSetback),
    play: whole(door.mortise.endPlay),
    horn: whole(door.horn),
    chisel,
    fit: whole(FIT[units]),
  };
}

/** Every setting of a door for which it is known how far it may be off. */
function allowancesIn({ parts }: PlanDoor): [string, Allowed][] {
  return parts.flatMap(({ part, stages }) =>
    stages.flatMap(({ stage, allow = {}, places = [] }) => [
      ...Object.entries(allow).map(([name, each]): [string, Allowed] => [`${part}/${stage}/${name}`, each]),
      ...places.flatMap(({ at, allow: own = {} }) =>
        Object.entries(own).map(([name, each]): [string, Allowed] => [
          `${part}/${stage}@${at}/${name}`,
          each,
        ]),
      ),
    ]),
  );
}

const named = new Map(Object.entries(allowWords).map(([key, words]) => [words as string, key]));

/** Most doors have wood enough; some have so little of it, or a panel so little held, that other limits come before the usual ones. */
const anyDoor = fc
  .record({
    door: randomDoor,
    clearance: fc.constantFrom('0', '1/32', '1/16', '3/32', '1/8'),
    scant: fc.option(
      fc.record({
        stile: fc.constantFrom('1 7/16', '1 1/2', '1 3/4'),
        bottom: fc.constantFrom('15/16', '1', '1 1/8'),
        crown: fc.constantFrom('15/16', '1', '1 1/8'),
        mid: fc.constantFrom('3/4', '13/16', '1', '1 1/4', '1 7/16'),
        tenon: fc.constantFrom('1/4', '9/32', '5/16', '3/8', '3/4'),
        inner: fc.constantFrom('0', '1/16'),
      }),
      // Half of them.
      { freq: 2 },
    ),
  })
  .map(({ door, clearance, scant }) => ({
    ...door,
    panel: { ...door.panel, clearance },
    ...(scant === null
      ? {}
      : {
          stile: { width: scant.stile },
          bottomRail: { width: scant.bottom },
          topRail: { width: scant.crown },
          tenon: { ...door.tenon, length: scant.tenon, innerSetback: scant.inner },
          midRails: door.midRails.map((rail) => ({ ...rail, width: scant.mid })),
        }),
  }));

test.each(['in', 'mm'] as const)(
  'in %s a setting off by what it is allowed keeps every limit, and one off by a hair more breaks the one that is named',
  (units) => {
    let made = 0;
    let errors = 0;
    const bounds = new Set<string>();
    fc.assert(
      fc.property(anyDoor, ways, fc.integer(), (fields, inWays, seed) => {
        const door = units === 'in' ? fields : { ...(inMillimetres(fields) as typeof fields), mark: 'A' };
        const planned = planFile({ format: 1, job: 'x', units, ways: inWays, doors: [door] }, { why: 'en' });
        const made1 = planned.ok ? planned.value.doors[0] : undefined;
        if (made1 === undefined) return;
        made += 1;
        const chance = chances(seed);
        const settings = settingsOf(made1);
        const chisel = settings.get('stile-left/mortise/chisel') ?? Number.NaN;
        const { brokenBy } = limitsOf(settings, ordered(door, units, chisel), PRACTICE[units]);
        const wrong: string[] = [];
        for (const [key, { less, more, lessBy = '', moreBy = '' }] of allowancesIn(made1))
          for (const [side, room, by] of [
            [-1, whole(less), lessBy],
            [1, whole(more), moreBy],
          ] as const) {
            const bound = named.get(by) ?? by;
            bounds.add(bound);
            for (const within of room === 0 ? [] : [room, Math.floor(chance() * room)]) {
              errors += 1;
              const broken = brokenBy(key, side * within);
              if (broken.length > 0) wrong.push(`${key} off by ${side * within}: broken ${broken.join()}`);
            }
            errors += 1;
            const beyond = brokenBy(key, side * (room + A_HAIR[units]));
            if (!beyond.some((name) => name.startsWith(`${bound} `)))
              wrong.push(`${key} beyond ${side * room}: ${bound}, broken ${beyond.join()}`);
          }
        expect(wrong).toEqual([]);
      }),
      { numRuns: samples(100, 10_000) },
    );
    expect(made).toBeGreaterThan(samples(25, 2500));
    const never = Object.keys(allowWords).filter((key) => key.startsWith('bound.') && !bounds.has(key));
    if (inFull)
      console.log(`${units}: ${made} doors, ${errors} errors; never the nearest limit: ${never.join()}`);
    expect(inFull ? never : []).toEqual([]);
  },
);
