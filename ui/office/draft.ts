import { isTree } from '#core/job/read-shape.ts';
import { doorDefaults } from '#core/job/defaults.ts';
import { printLength } from '#core/length/print-length.ts';
import type { Units } from '#core/plan/plan.ts';

/** A row of the office's form: one mark, as typed. */
export interface Row {
  readonly key: number;
  mark: string;
  quantity: string;
  width: string;
  height: string;
  arched: boolean;
  rise: string;
  flat: string;
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
  'mortise.clearance',
  'mortise.endPlay',
  'horn',
  'reveal',
  'oversize.width',
  'oversize.height',
  'panel.thickness',
  'panel.clearance',
] as const;
export type DefaultField = (typeof DEFAULT_FIELDS)[number];

let lastKey = 0;

export function emptyRow(): Row {
  lastKey += 1;
  return {
    key: lastKey,
    mark: '',
    quantity: '1',
    width: '',
    height: '',
    arched: false,
    rise: '',
    flat: '',
    other: {},
  };
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
    otherDefaults: {},
    rows: [emptyRow()],
  };
}

/** The built-in defaults as texts. */
export function builtIn(units: Units): Record<DefaultField, string> {
  const defaults: unknown = doorDefaults(units);
  const read = (field: DefaultField): string => {
    const value = field
      .split('.')
      .reduce<unknown>((tree, name) => (isTree(tree) ? tree[name] : undefined), defaults);
    return printLength(value as Parameters<typeof printLength>[0]);
  };
  return Object.fromEntries(DEFAULT_FIELDS.map((field) => [field, read(field)])) as Record<
    DefaultField,
    string
  >;
}

/** The job file that a form makes: every default written out, so that no later change of the shop's changes this job. */
export function fileOf(draft: Draft): Record<string, unknown> {
  const defaults: Record<string, unknown> = { ...draft.otherDefaults };
  for (const field of DEFAULT_FIELDS) {
    const [group = '', name] = field.split('.');
    if (name === undefined) defaults[group] = draft.defaults[field].trim();
    else
      defaults[group] = {
        ...(isTree(defaults[group]) ? defaults[group] : {}),
        [name]: draft.defaults[field].trim(),
      };
  }
  return {
    format: 1,
    ...(draft.ownId === undefined ? {} : { id: draft.ownId }),
    job: draft.job.trim(),
    ...(draft.due === '' ? {} : { due: draft.due }),
    units: draft.units,
    defaults,
    doors: draft.rows.map((row) => ({
      ...row.other,
      mark: row.mark.trim(),
      quantity: /^\d{1,6}$/.test(row.quantity.trim()) ? Number(row.quantity) : row.quantity,
      opening: { width: row.width.trim(), height: row.height.trim() },
      ...(row.arched ? { arch: { rise: row.rise.trim(), flat: row.flat.trim() } } : {}),
    })),
  };
}

/** A form filled from a job file that core has read without faults: a new job, or the one that the hub holds by this id. */
export function draftOf(file: unknown, id: string | null, revision: number | null): Draft {
  const tree = isTree(file) ? file : {};
  const units: Units = tree.units === 'mm' ? 'mm' : 'in';
  const draft = emptyDraft(units);
  draft.id = id;
  draft.ownId = tree.id;
  draft.revision = revision;
  draft.job = text(tree.job);
  draft.due = text(tree.due);
  const given = isTree(tree.defaults) ? tree.defaults : {};
  for (const field of DEFAULT_FIELDS) {
    const value = field
      .split('.')
      .reduce<unknown>((step, name) => (isTree(step) ? step[name] : undefined), given);
    if (value !== undefined) draft.defaults[field] = text(value);
  }
  draft.otherDefaults = { ...given };
  draft.rows = (Array.isArray(tree.doors) ? tree.doors : []).filter(isTree).map((door) => {
    const { mark, quantity, opening, arch, ...other } = door;
    const size = isTree(opening) ? opening : {};
    const arched = isTree(arch);
    return {
      ...emptyRow(),
      mark: text(mark),
      quantity: text(quantity ?? 1),
      width: text(size.width),
      height: text(size.height),
      arched,
      rise: arched ? text(arch.rise) : '',
      flat: arched ? text(arch.flat) : '',
      other,
    };
  });
  return draft;
}

function text(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}
