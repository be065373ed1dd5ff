import type { Shop, ShopFile } from '#core/api/shop-api.ts';
import { STATIONS } from '#core/joint/names.ts';

/** The shop as it is typed: every field a text until it is saved. */
export interface ShopDraft {
  name: string;
  units: 'in' | 'mm';
  people: { key: number; id: string; name: string; badge: string }[];
  denominator: string;
  places: string;
  prefix: string;
  suffix: string;
  everyHours: string;
  keep: string;
  widths: Record<string, string>;
  tools: Record<Tool, string>;
}

/** The tools that the office lets one change; lists are typed with commas. */
export const TOOLS = [
  'chisels',
  'dadoWidths',
  'drums',
  'blade.diameter',
  'blade.greatestHeight',
  'bearingRadius',
  'slidingFit',
  'panelBand',
] as const;
export type Tool = (typeof TOOLS)[number];
/** Those of which a shop has several sizes: typed with commas between. */
export const LISTS: readonly Tool[] = ['chisels', 'dadoWidths', 'drums'];

let lastKey = 0;

/** An empty row for one more person. */
export function emptyPerson(): ShopDraft['people'][number] {
  lastKey += 1;
  return { key: lastKey, id: '', name: '', badge: '' };
}

/** A form filled from the shop. */
export function shopDraftOf(shop: Shop): ShopDraft {
  const { profile } = shop;
  return {
    name: shop.name,
    units: shop.units,
    people: shop.people.map(({ id, name, badge }) => ({ ...emptyPerson(), id, name, badge: badge.slice(2) })),
    denominator: String(shop.rounding.denominator),
    places: String(shop.rounding.places),
    prefix: shop.scanner.prefix,
    suffix: shop.scanner.suffix,
    everyHours: String(shop.backup.everyHours),
    keep: String(shop.backup.keep),
    widths: Object.fromEntries(
      STATIONS.map((station) => [station, String(shop.stations[station]?.screenWidthMm ?? '')]),
    ),
    tools: {
      chisels: profile.chisels.join(', '),
      dadoWidths: profile.dadoWidths.join(', '),
      drums: profile.drums.join(', '),
      'blade.diameter': profile.blade.diameter,
      'blade.greatestHeight': profile.blade.greatestHeight,
      bearingRadius: profile.bearingRadius,
      slidingFit: profile.slidingFit,
      panelBand: profile.panelBand,
    },
  };
}

/** The shop that a form makes over the one it was filled from; the hub reads it and gives its faults by name. */
export function shopFileOf(draft: ShopDraft, before: Shop): ShopFile {
  const { revision: _revision, ...rest } = before;
  const tools: Record<string, unknown> = {};
  for (const tool of TOOLS) {
    const typed = draft.tools[tool].trim();
    const [group = '', field] = tool.split('.');
    if (field !== undefined) tools[group] = { ...(tools[group] as object | undefined), [field]: typed };
    else tools[group] = LISTS.includes(tool) ? listOf(typed) : typed;
  }
  const ids = new Set<string>();
  return {
    ...rest,
    name: draft.name.trim(),
    people: draft.people
      .filter(({ name, badge }) => name.trim() !== '' || badge.trim() !== '')
      .map(({ id, name, badge }) => ({
        id: id === '' ? freshId(name, ids) : id,
        name: name.trim(),
        badge: `P-${badge.trim().toUpperCase().replace(/^P-/, '')}`,
      })),
    rounding: {
      denominator: draft.denominator === '16' ? 16 : draft.denominator === '32' ? 32 : 64,
      places: draft.places === '1' ? 1 : draft.places === '2' ? 2 : 3,
    },
    scanner: { prefix: draft.prefix, suffix: draft.suffix },
    backup: { everyHours: Number(draft.everyHours), keep: Number(draft.keep) },
    stations: Object.fromEntries(
      Object.entries(draft.widths)
        .filter(([, width]) => width.trim() !== '')
        .map(([station, width]) => [station, { screenWidthMm: Number(width) }]),
    ),
    profile: { ...before.profile, ...tools },
  };
}

function listOf(typed: string): string[] {
  return typed
    .split(',')
    .map((each) => each.trim())
    .filter((each) => each !== '');
}

/** A name made into an id, with a number when it is taken. */
function freshId(name: string, taken: Set<string>): string {
  const plain =
    name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '')
      .slice(0, 30) || 'person';
  let id = plain;
  for (let k = 2; taken.has(id); k += 1) id = `${plain}-${k}`;
  taken.add(id);
  return id;
}
