import fc from 'fast-check';
import { multiplied, plus, printed, ratio, type Ratio } from '../core/exact.ts';
import { inMillimetres } from './in-millimetres.ts';
import { randomDoor, ways } from './random-door.ts';

/** What a length is more than the sixteenths of a random door: odd sixty-fourths, finer halves, thirds of a thirty-second. */
const odd = fc.oneof(
  fc.constant('0'),
  fc.integer({ min: 0, max: 3 }).map((n) => `${n}/64`),
  fc.integer({ min: 0, max: 7 }).map((n) => `${n}/128`),
  fc.constantFrom('1/96', '5/96', '1/25'),
);

/** How far stock and groove came out from what was ordered, in 1/64 in. */
const off = fc.constantFrom(-1, 0, 0, 1);

const add = (value: string, more: string): string => printed(plus(ratio(improper(value)), ratio(more)));

/** "35/16" as a printed length, which the plan's own are. */
function improper(value: string): string {
  const [n = '0', d] = value.split('/');
  return d === undefined || value.includes(' ') ? value : printed({ n: BigInt(n), d: BigInt(d) });
}

/** A door of odd sizes with what was measured of it, as files in these units. */
export interface OddDoor {
  readonly door: Record<string, unknown>;
  readonly measured: { readonly thickness: string; readonly grooveWidth: string };
  readonly haunchClearance: string;
  readonly ways?: Record<string, string>;
}

/** Doors as random ones are, every size of them off its sixteenth, measured 1/64 in thicker or thinner, the groove wider or narrower. */
export const oddDoor = fc
  .record({
    fields: randomDoor,
    ways,
    more: fc.array(odd, { minLength: 9, maxLength: 9 }),
    thicker: off,
    wider: off,
    bead: fc.constantFrom(null, '5/32', '7/32', '11/64'),
    clearance: fc.constantFrom('1/64', '1/32', '1/16', '3/32'),
  })
  .map(({ fields, ways, more: m, thicker, wider, bead, clearance }) => {
    const [w = '0', h = '0', s = '0', rb = '0', rt = '0', T = '0', t = '0', eo = '0', y = '0'] = m;
    const thickness = add(fields.thickness, T);
    return {
      door: {
        ...fields,
        opening: { width: add(fields.opening.width, w), height: add(fields.opening.height, h) },
        thickness,
        bead: fields.bead === '0' || bead === null ? fields.bead : bead,
        stile: { width: add(fields.stile.width, s) },
        bottomRail: { width: add(fields.bottomRail.width, rb) },
        topRail: { width: add(fields.topRail.width, rt) },
        tenon: {
          ...fields.tenon,
          length: add(fields.tenon.length, t),
          outerSetback: add(fields.tenon.outerSetback, eo),
        },
        panel: { ...fields.panel, clearance },
        arch:
          fields.arch === null ? null : { rise: add(fields.arch.rise, rt), flat: add(fields.arch.flat, s) },
        midRails: fields.midRails.map(({ width, centre }) => ({
          width: add(width, rb),
          centre: add(centre, y),
        })),
      },
      measured: {
        thickness: shifted(thickness, thicker),
        grooveWidth: shifted(fields.groove.width, wider),
      },
      haunchClearance: fields.tenon.haunchClearance,
      ways,
    };
  });

function shifted(value: string, sixtyFourths: number): string {
  const by: Ratio = { n: BigInt(sixtyFourths), d: 64n };
  return printed(plus(ratio(value), by));
}

/** The same in millimetres, exactly. */
export function oddInMillimetres({ door, measured, haunchClearance, ...ofJob }: OddDoor): OddDoor {
  const { mark, ...rest } = door;
  return {
    door: { ...(inMillimetres(rest) as Record<string, unknown>), mark },
    measured: inMillimetres(measured) as OddDoor['measured'],
    ...ofJob,
    haunchClearance: printed(multiplied(ratio(haunchClearance), { n: 127n, d: 5n })),
  };
}
