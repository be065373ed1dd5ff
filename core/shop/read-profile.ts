import type { PrintedProfile } from '../api/shop-api.ts';
import { type FaultList, isTree, readFields, refuseUnknown, report } from '../fields/read-shape.ts';
import type { Fields } from '../fields/shape.ts';
import type { Length } from '../length/length.ts';
import { kindOf } from '../fields/got.ts';
import { printLength } from '../length/print-length.ts';
import { typeLength } from '../length/type-length.ts';
import { faultOf, type Result } from '../fields/fault.ts';
import type { Units } from '../length/units.ts';
import { readStocks, writeStocks } from '../stickers/read-stocks.ts';
import { builtInProfile, type ShopProfile } from './shop-profile.ts';

const positive = { kind: 'length', positive: true } as const;
const FIELDS = {
  chisels: { kind: 'list', most: 30, of: positive },
  dadoWidths: { kind: 'list', most: 30, of: positive },
  blade: { kind: 'group', fields: { diameter: positive, greatestHeight: positive } },
  drums: { kind: 'list', most: 30, of: positive },
  bearingRadius: positive,
  slidingFit: { kind: 'length' },
  panelBand: positive,
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
  const moisture = input.moisture === undefined ? undefined : readMoisture(input.moisture, list);
  const stocks = input.stocks === undefined ? undefined : readStocks(input.stocks, 'stocks', units, list);
  if (list.faults.length > 0) return { ok: false, faults: list.faults };
  const base = builtInProfile(units);
  const profile: ShopProfile = {
    ...base,
    ...read,
    blade: { ...base.blade, ...read.blade },
    moisture: moisture ?? base.moisture,
    stocks: stocks ?? base.stocks,
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

function readMoisture(input: unknown, list: FaultList): ShopProfile['moisture'] | undefined {
  if (
    isTree(input) &&
    typeof input.low === 'number' &&
    typeof input.high === 'number' &&
    input.low >= 0 &&
    input.low <= input.high &&
    input.high <= 30
  )
    return { low: input.low, high: input.high };
  report(list, 'moisture', 'moisture');
  return undefined;
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
    },
    drums: texts(profile.drums),
    bearingRadius: printLength(profile.bearingRadius),
    slidingFit: printLength(profile.slidingFit),
    panelBand: printLength(profile.panelBand),
    stripStation: profile.stripStation,
    moisture: profile.moisture,
    stocks: writeStocks(profile.stocks),
  };
}
