import { type Length, length } from '../length/length.ts';
import type { Stocks } from '../stickers/stock.ts';
import type { Units } from '../length/units.ts';
import type { Moisture } from '../job/moisture.ts';
import { BUILT_IN_WAYS, type Ways } from '../job/ways.ts';

/** The shop's tools, as far as settings depend on them. Lengths in the job's units. */
export interface ShopProfile {
  readonly units: Units;
  /** Widths of the hollow chisels at the mortiser. */
  readonly chisels: readonly Length[];
  /** Widths to which the dado set can be made up. */
  readonly dadoWidths: readonly Length[];
  /** The saw blade, how high it can be raised, and how high the shop raises it for a stopped rip; null: just clear of the stock. */
  readonly blade: {
    readonly diameter: Length;
    readonly greatestHeight: Length;
    readonly ripHeight: Length | null;
  };
  /** Diameters of the sanding drums. */
  readonly drums: readonly Length[];
  /** Radius of the bearing on the bead and slot cutters. */
  readonly bearingRadius: Length;
  /** What a tongue is thinner than its groove, to slide in it. */
  readonly slidingFit: Length;
  /** Width of the band that the raising cutter lowers. */
  readonly panelBand: Length;
  /** How the cuts are made that can be made in two ways. */
  readonly ways: Ways;
  /** Where the strip of bead is ripped off. */
  readonly stripStation: 'table-saw' | 'band-saw';
  /** Of the wood on the day of glue-up, and the least and the most in the house, percent. */
  readonly moisture: Moisture;
  /** How near the shop comes to what it sets: the ± of a fence, a stop, a height, and of a milled size. */
  readonly tolerances: Tolerances;
  /** The shop's own stocks of stickers, and what its printers make of the built-in ones. */
  readonly stocks: Stocks;
}

/** How near a shop comes to a number, either way, in the job's units. */
export interface Tolerances {
  readonly fence: Length;
  readonly stop: Length;
  /** Of a blade, a cutter, or a chisel’s depth. */
  readonly height: Length;
  /** Of a length or a width as milled. */
  readonly milling: Length;
}

/** The built-in shop: common practice, no source. */
export function builtInProfile(units: Units): ShopProfile {
  const mm = units === 'mm';
  const whole = (...values: readonly number[]): Length[] => values.map((each) => length(each));
  return {
    units,
    chisels: mm ? whole(6, 8, 10, 12) : [length(1, 4), length(5, 16), length(3, 8), length(1, 2)],
    dadoWidths: mm
      ? whole(3, 4, 5, 6, 8, 10)
      : [length(1, 8), length(3, 16), length(1, 4), length(5, 16), length(3, 8), length(1, 2)],
    blade: {
      diameter: mm ? length(254) : length(10),
      greatestHeight: mm ? length(76) : length(3),
      ripHeight: null,
    },
    drums: mm ? whole(13, 25, 38, 50, 75) : [length(1, 2), length(1), length(3, 2), length(2), length(3)],
    bearingRadius: mm ? length(6) : length(1, 4),
    slidingFit: mm ? length(2, 5) : length(1, 64),
    panelBand: mm ? length(25) : length(1),
    ways: BUILT_IN_WAYS,
    stripStation: 'table-saw',
    moisture: { atBuild: 8, low: 6, high: 12 },
    tolerances: mm
      ? { fence: length(1, 5), stop: length(2, 5), height: length(1, 5), milling: length(2, 5) }
      : { fence: length(1, 128), stop: length(1, 64), height: length(1, 128), milling: length(1, 64) },
    stocks: {},
  };
}
