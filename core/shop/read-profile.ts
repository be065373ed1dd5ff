import type { PrintedProfile } from '../api/shop-api.ts';
import { type FaultList, isTree, readFields, refuseUnknown, report } from '../fields/read-shape.ts';
import type { Fields } from '../fields/shape.ts';
import { type Length, sign } from '../length/length.ts';
import { kindOf } from '../fields/got.ts';
import { printLength } from '../length/print-length.ts';
import { typeLength } from '../length/type-length.ts';
import { faultOf, type Result } from '../fields/fault.ts';
import type { Units } from '../length/units.ts';
import { readStocks, writeStocks } from '../stickers/read-stocks.ts';
import { readMoisture } from '../job/moisture.ts';
import { WAY_FIELDS } from '../job/ways.ts';
import { builtInProfile, type ShopProfile } from './shop-profile.ts';

const positive = { kind: 'length', positive: true } as const;
const FIELDS = {
  chisels: { kind: 'list', most: 30, of: positive },
  dadoWidths: { kind: 'list', most: 30, of: positive },
  blade: {
    kind: 'group',
    fields: { diameter: positive, greatestHeight: positive, ripHeight: { kind: 'length' } },
  },
  drums: { kind: 'list', most: 30, of: positive },
  bearingRadius: positive,
  slidingFit: { kind: 'length' },
  panelBand: positive,
  ways: { kind: 'group', fields: WAY_FIELDS },
  tolerances: {
    kind: 'group',
    fields: {
      fence: { kind: 'length' },
      stop: { kind: 'length' },
      height: { kind: 'length' },
      milling: { kind: 'length' },
    },
  },
  stripStation: { kind: 'word', of: ['table-saw', 'band-saw'] },
} as const satisfies Fields;

/** A shop profile as it stands in a file: some or all of its fields, lengths as text; what is left out is the built-in shop's. */
export function readProfile(input: unknown, units: Units): Result<ShopProfile> {
  const list: FaultList = { faults: [], dropped: 0 };
  if (!isTree(input))
    return { ok: false, faults: [faultOf('(profile)', 'type.object', { got: kindOf(input) })] };
  refuseUnknown(input, ['format', 'units', 'moisture', 'stocks', ...Object.keys(FIELDS)], '', list);
  if (input.format !== undefined && input.format !== 1) report(list, 'format', 'format.profile');
  if (input.units !== undefined && input.units !== units) report(list, 'units', 'word.profile', { units });
  const read = readFields(input, FIELDS, '', units, list);
  const moisture = input.moisture === undefined ? undefined : readMoisture(input.moisture, 'moisture', list);
  const stocks = input.stocks === undefined ? undefined : readStocks(input.stocks, 'stocks', units, list);
  if (list.faults.length > 0) return { ok: false, faults: list.faults };
  const base = builtInProfile(units);
  const profile: ShopProfile = {
    ...base,
    ...read,
    blade: { ...base.blade, ...read.blade, ripHeight: ripHeightOf(read.blade?.ripHeight) },
    ways: { ...base.ways, ...read.ways },
    tolerances: { ...base.tolerances, ...read.tolerances },
    moisture: moisture ?? base.moisture,
    stocks: stocks ?? base.stocks,
  };
  const { ripHeight, greatestHeight } = profile.blade;
  if (ripHeight !== null && ripHeight.compare(greatestHeight) > 0)
    return {
      ok: false,
      faults: [
        faultOf('blade.ripHeight', 'rip-height', { most: { typed: typeLength(greatestHeight, units) } }),
      ],
    };
  const radius = profile.blade.diameter.div(2);
  if (profile.blade.greatestHeight.compare(radius) > 0)
    return {
      ok: false,
      faults: [
        faultOf('blade.greatestHeight', 'blade', {
          diameter: { typed: typeLength(profile.blade.diameter, units) },
        }),
      ],
    };
  return { ok: true, value: profile };
}

/** How high the shop raises its blade for a rip; 0 says no more than nothing does: just clear of the stock. */
function ripHeightOf(read: Length | undefined): Length | null {
  return read === undefined || sign(read) === 0 ? null : read;
}

/** The profile as a file holds it, every field given. */
export function writeProfile(profile: ShopProfile): PrintedProfile {
  const texts = (list: readonly Length[]) => list.map(printLength);
  return {
    format: 1,
    units: profile.units,
    chisels: texts(profile.chisels),
    dadoWidths: texts(profile.dadoWidths),
    blade: {
      diameter: printLength(profile.blade.diameter),
      greatestHeight: printLength(profile.blade.greatestHeight),
      ...(profile.blade.ripHeight === null ? {} : { ripHeight: printLength(profile.blade.ripHeight) }),
    },
    drums: texts(profile.drums),
    bearingRadius: printLength(profile.bearingRadius),
    slidingFit: printLength(profile.slidingFit),
    panelBand: printLength(profile.panelBand),
    ways: profile.ways,
    stripStation: profile.stripStation,
    moisture: profile.moisture,
    tolerances: {
      fence: printLength(profile.tolerances.fence),
      stop: printLength(profile.tolerances.stop),
      height: printLength(profile.tolerances.height),
      milling: printLength(profile.tolerances.milling),
    },
    stocks: writeStocks(profile.stocks),
  };
}
