import type { Shop, ShopFile } from '#core/api/shop-api.ts';
import { parseLength } from '#core/length/parse-length.ts';
import { typeLength } from '#core/length/type-length.ts';
import type { Units } from '#core/length/units.ts';
import { STATIONS } from '#core/stages/stations.ts';
import type { Language } from '#core/words/languages.ts';

/** The shop as it is typed: every field a text until it is saved. */
export interface ShopDraft {
  name: string;
  units: 'in' | 'mm';
  language: Language;
  people: { key: number; id: string; name: string; badge: string }[];
  denominator: string;
  places: string;
  prefix: string;
  suffix: string;
  everyHours: string;
  keep: string;
  widths: Record<string, string>;
  /** The bead behind the rails: notched away, or ripped at either saw. */
  strip: 'notch' | 'rip' | 'rip-band-saw';
  groove: 'saw' | 'router';
  /** In percent. */
  moisture: Record<keyof Shop['profile']['moisture'], string>;
  /** In inches, for jobs in inches, and in millimetres for the others. */
  tools: Record<Units, Record<Tool, string>>;
}

/** The tools that the office lets one change; lists are typed with commas. */
export const TOOLS = [
  'chisels',
  'dadoWidths',
  'drums',
  'blade.diameter',
  'blade.greatestHeight',
  'blade.ripHeight',
  'bearingRadius',
  'slidingFit',
  'panelBand',
  'tolerances.fence',
  'tolerances.stop',
  'tolerances.height',
  'tolerances.milling',
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
  return {
    name: shop.name,
    units: shop.units,
    language: shop.language ?? 'en',
    people: shop.people.map(({ id, name, badge }) => ({ ...emptyPerson(), id, name, badge: badge.slice(2) })),
    denominator: String(shop.rounding.denominator),
    places: shop.rounding.half === true ? 'half' : String(shop.rounding.places),
    prefix: shop.scanner.prefix,
    suffix: shop.scanner.suffix,
    everyHours: String(shop.backup.everyHours),
    keep: String(shop.backup.keep),
    widths: Object.fromEntries(
      STATIONS.map((station) => [station, String(shop.stations[station]?.screenWidthMm ?? '')]),
    ),
    strip: stripOf(shop.profile),
    groove: shop.profile.ways.groove,
    moisture: {
      atBuild: String(shop.profile.moisture.atBuild),
      low: String(shop.profile.moisture.low),
      high: String(shop.profile.moisture.high),
    },
    tools: {
      in: toolsOf(profileIn(shop, 'in')),
      mm: toolsOf(profileIn(shop, 'mm')),
    },
  };
}

function profileIn(shop: Shop, units: Units): Shop['profile'] {
  return shop.units === units ? shop.profile : shop.otherProfile;
}

function toolsOf(profile: Shop['profile']): Record<Tool, string> {
  return {
    chisels: typed(profile.chisels, profile.units),
    dadoWidths: typed(profile.dadoWidths, profile.units),
    drums: typed(profile.drums, profile.units),
    'blade.diameter': typed([profile.blade.diameter], profile.units),
    'blade.greatestHeight': typed([profile.blade.greatestHeight], profile.units),
    'blade.ripHeight': typed(
      profile.blade.ripHeight === undefined ? [] : [profile.blade.ripHeight],
      profile.units,
    ),
    bearingRadius: typed([profile.bearingRadius], profile.units),
    slidingFit: typed([profile.slidingFit], profile.units),
    panelBand: typed([profile.panelBand], profile.units),
    'tolerances.fence': typed(plusMinus(profile, 'fence'), profile.units),
    'tolerances.stop': typed(plusMinus(profile, 'stop'), profile.units),
    'tolerances.height': typed(plusMinus(profile, 'height'), profile.units),
    'tolerances.milling': typed(plusMinus(profile, 'milling'), profile.units),
  };
}

/** What the shop has said of how near it comes; nothing, where a screen remembers a shop from before it was asked. */
function plusMinus(
  { tolerances }: Shop['profile'],
  of: 'fence' | 'stop' | 'height' | 'milling',
): readonly string[] {
  return tolerances === undefined ? [] : [tolerances[of]];
}

/** Printed lengths as one types them: decimals in millimetres. */
function typed(printed: readonly string[], units: Units): string {
  return printed
    .map((each) => {
      const read = parseLength(each, units);
      return read.ok ? typeLength(read.value, units) : each;
    })
    .join(', ');
}

/** The shop that a form makes over the one it was filled from; the hub reads it and gives its faults by name. */
export function shopFileOf(draft: ShopDraft, before: Shop): ShopFile {
  const { revision: _revision, ...rest } = before;
  const ids = new Set<string>();
  return {
    ...rest,
    name: draft.name.trim(),
    ...(before.language === undefined && draft.language === 'en' ? {} : { language: draft.language }),
    people: draft.people
      .filter(({ name, badge }) => name.trim() !== '' || badge.trim() !== '')
      .map(({ id, name, badge }) => ({
        id: id === '' ? freshId(name, ids) : id,
        name: name.trim(),
        badge: `P-${badge.trim().toUpperCase().replace(/^P-/, '')}`,
      })),
    rounding: {
      denominator: draft.denominator === '16' ? 16 : draft.denominator === '32' ? 32 : 64,
      ...placesOf(draft.places),
    },
    scanner: { prefix: draft.prefix, suffix: draft.suffix },
    backup: { everyHours: Number(draft.everyHours), keep: Number(draft.keep) },
    stations: Object.fromEntries(
      Object.entries(draft.widths)
        .filter(([, width]) => width.trim() !== '')
        .map(([station, width]) => [station, { screenWidthMm: Number(width) }]),
    ),
    profile: { ...before.profile, ...fieldsOf(draft.tools[before.profile.units]), ...waysOf(draft) },
    otherProfile: {
      ...before.otherProfile,
      ...fieldsOf(draft.tools[before.otherProfile.units]),
      ...waysOf(draft),
    },
  };
}

function stripOf({ ways, stripStation }: Shop['profile']): ShopDraft['strip'] {
  if (ways.strip === 'notch') return 'notch';
  return stripStation === 'band-saw' ? 'rip-band-saw' : 'rip';
}

/** What is alike for jobs of both units; what is no number of percent goes as it was typed, so that it is told. */
function waysOf({ strip, groove, moisture }: ShopDraft): Record<string, unknown> {
  const percent = (text: string) => (/^\d{1,2}(\.\d+)?$/.test(text.trim()) ? Number(text) : text);
  return {
    ways: { strip: strip === 'notch' ? 'notch' : 'rip', groove },
    ...(strip === 'notch' ? {} : { stripStation: strip === 'rip' ? 'table-saw' : 'band-saw' }),
    moisture: {
      atBuild: percent(moisture.atBuild),
      low: percent(moisture.low),
      high: percent(moisture.high),
    },
  };
}

/** Half millimetres are read to one place. */
function placesOf(chosen: string): Pick<ShopFile['rounding'], 'places' | 'half'> {
  if (chosen === 'half') return { places: 1, half: true };
  return { places: chosen === '1' ? 1 : chosen === '2' ? 2 : 3 };
}

/** The tools as a profile has them. */
function fieldsOf(tools: Record<Tool, string>): Record<string, unknown> {
  const fields: Record<string, unknown> = {};
  for (const tool of TOOLS) {
    const text = tools[tool].trim();
    if (tool === 'blade.ripHeight' && text === '') continue;
    const [group = '', field] = tool.split('.');
    if (field !== undefined) fields[group] = { ...(fields[group] as object | undefined), [field]: text };
    else fields[group] = LISTS.includes(tool) ? listOf(text) : text;
  }
  return fields;
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
