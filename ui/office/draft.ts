import { isTree } from '#core/fields/read-shape.ts';
import { doorDefaults } from '#core/job/defaults.ts';
import { typeLength } from '#core/length/type-length.ts';
import type { Moisture } from '#core/job/moisture.ts';
import type { Ways } from '#core/job/ways.ts';
import type { Units } from '#core/length/units.ts';
import { eachOwn, isOwnPath, ownCount, type OwnPath } from './own-fields.ts';
import { isRevealSide, REVEAL_SIDES, type RevealSide } from './reveal-text.ts';

/** A mid rail of a row, as typed. */
export interface MidRailRow {
  readonly key: number;
  width: string;
  centre: string;
}

/** A row of the office's form: one mark, as typed. */
export interface Row {
  readonly key: number;
  mark: string;
  quantity: string;
  width: string;
  height: string;
  hinge: 'left' | 'right';
  arched: boolean;
  rise: string;
  flat: string;
  midRails: MidRailRow[];
  /** The door's own list of mid rails stands in the file, if only to say that it has none. */
  ownMidRails: boolean;
  /** The panel's species; empty where it is the job's. */
  species: string;
  /** The door's own measures and the survey of its opening; empty where they are the job's. */
  own: Record<OwnPath, string>;
  /** What a file brought for this door that the form has no field for; it is kept as it is. */
  other: Record<string, unknown>;
}

/** A job as it is typed: every field a text until it is read by core. */
export interface Draft {
  /** The hub's name for the job that is changed; null for a new one. It may be any text, and is no part of the file. */
  id: string | null;
  /** The id that the file itself brought, if it did; it is kept as it is. */
  ownId: unknown;
  revision: number | null;
  job: string;
  due: string;
  units: Units;
  defaults: Record<DefaultField, string>;
  /** The job's own ways and moisture; empty where they are the shop's. */
  ways: { strip: '' | Ways['strip']; groove: '' | Ways['groove'] };
  moisture: Record<keyof Moisture, string>;
  /** The species of the panels; empty where none is said. */
  species: string;
  /** What a file brought among its defaults that the form has no field for. */
  otherDefaults: Record<string, unknown>;
  rows: Row[];
}

/** The door fields that the form lets one change for the whole job, by their path. */
export const DEFAULT_FIELDS = [
  'thickness',
  'stile.width',
  'bottomRail.width',
  'topRail.width',
  'bead',
  'groove.width',
  'groove.depth',
  'tenon.length',
  'tenon.outerSetback',
  'tenon.innerSetback',
  'tenon.haunchClearance',
  'mortise.clearance',
  'mortise.endPlay',
  'horn',
  'reveal',
  'oversize.width',
  'oversize.height',
  'panel.thickness',
  'panel.clearance',
] as const;
export type DefaultField = (typeof DEFAULT_FIELDS)[number] | RevealSide;
/** The same with each side's own reveal. */
const DEFAULT_PATHS: readonly DefaultField[] = [...DEFAULT_FIELDS, ...REVEAL_SIDES];

/** Is this path one of the fields for the whole job? */
export function isDefaultField(path: string): path is DefaultField {
  return (DEFAULT_PATHS as readonly string[]).includes(path);
}

let lastKey = 0;
/** A key that no row or rail of a form has had yet. */
export const freshKey = () => (lastKey += 1);

export function emptyMidRail(): MidRailRow {
  return { key: freshKey(), width: '', centre: '' };
}

export function emptyRow(): Row {
  return {
    key: freshKey(),
    mark: '',
    quantity: '1',
    width: '',
    height: '',
    hinge: 'left',
    arched: false,
    rise: '',
    flat: '',
    midRails: [],
    ownMidRails: false,
    species: '',
    own: eachOwn(() => ''),
    other: {},
  };
}

/** Has somebody typed into this row? */
export function isFilled({ mark, width, height, arched, midRails, own }: Row): boolean {
  const typed = [mark, width, height].some((text) => text.trim() !== '');
  return typed || arched || midRails.length > 0 || ownCount(own) > 0;
}

/** Does a row say this itself, of the fields that otherwise are the whole job's? */
export function saysItself(row: Row | undefined, field: string): boolean {
  if (row === undefined) return false;
  if (isRevealSide(field) && row.own.reveal.trim() !== '') return true;
  if (isOwnPath(field)) return row.own[field].trim() !== '';
  return valueAt(row.other, field) !== undefined;
}

/** What holds of the whole job where a door says nothing itself; empty where the job says nothing either. */
export function usualAt(draft: Draft, path: OwnPath): string {
  if (isRevealSide(path)) return draft.defaults[path].trim() || draft.defaults.reveal.trim();
  if (isDefaultField(path)) return draft.defaults[path].trim();
  const value = valueAt(draft.otherDefaults, path);
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}

/** A new job's form, with the built-in defaults shown. */
export function emptyDraft(units: Units): Draft {
  return {
    id: null,
    ownId: undefined,
    revision: null,
    job: '',
    due: '',
    units,
    defaults: builtIn(units),
    ways: { strip: '', groove: '' },
    moisture: { atBuild: '', low: '', high: '' },
    species: '',
    otherDefaults: {},
    rows: [emptyRow()],
  };
}

/** The built-in defaults as texts. */
export function builtIn(units: Units): Record<DefaultField, string> {
  const defaults: unknown = doorDefaults(units);
  const read = (field: string): string =>
    typeLength(valueAt(defaults, field) as Parameters<typeof typeLength>[0], units);
  const texts = DEFAULT_PATHS.map((field): [DefaultField, string] => [
    field,
    // One length all round is built in.
    isRevealSide(field) ? '' : read(field === 'reveal' ? 'reveal.left' : field),
  ]);
  return Object.fromEntries(texts) as Record<DefaultField, string>;
}

/** What stands at a path of names, "tenon.length"; undefined where nothing does. */
export function valueAt(tree: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((step, name) => (isTree(step) ? step[name] : undefined), tree);
}
