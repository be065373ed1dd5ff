import { isTree, type Tree } from '#core/fields/read-shape.ts';
import { findSpecies } from '#core/movement/find-species.ts';
import type { Units } from '#core/length/units.ts';
import {
  DEFAULT_FIELDS,
  type Draft,
  emptyDraft,
  emptyMidRail,
  emptyRow,
  type Row,
  valueAt,
} from './draft.ts';
import { eachOwn, OWN_PATHS, ownTree } from './own-fields.ts';
import { revealIn, revealPaths, revealText, revealTree } from './reveal-text.ts';

/** The job file that a form makes: every default written out, so that no later change of the shop's changes this job. */
export function fileOf(draft: Draft): Tree {
  const defaults: Record<string, unknown> = { ...draft.otherDefaults };
  for (const field of DEFAULT_FIELDS) {
    const [group = '', name] = field.split('.');
    if (field === 'reveal') defaults[group] = revealTree(revealIn(draft.defaults)) ?? '';
    else if (name === undefined) defaults[group] = draft.defaults[field].trim();
    else
      defaults[group] = {
        ...(isTree(defaults[group]) ? defaults[group] : {}),
        [name]: draft.defaults[field].trim(),
      };
  }
  defaults.panel = withSpecies(defaults.panel, draft.species);
  return {
    format: 1,
    ...(draft.ownId === undefined ? {} : { id: draft.ownId }),
    job: draft.job.trim(),
    ...(draft.due === '' ? {} : { due: draft.due }),
    units: draft.units,
    ...waysOf(draft),
    defaults,
    doors: draft.rows.map(doorOf),
  };
}

/** The job's own ways and moisture, where it names them; what is no number of percent goes as it was typed, so that it is told. */
function waysOf({ ways, moisture }: Draft): Tree {
  const own = Object.entries(ways).filter(([, way]) => way !== '');
  const percent = (text: string) => (/^\d{1,2}(\.\d+)?$/.test(text) ? Number(text) : text);
  const typed = Object.entries(moisture).map(([name, text]) => [name, text.trim()] as const);
  const given = typed.filter(([, text]) => text !== '');
  return {
    ...(own.length === 0 ? {} : { ways: Object.fromEntries(own) }),
    ...(given.length === 0
      ? {}
      : { moisture: Object.fromEntries(given.map(([name, text]) => [name, percent(text)])) }),
  };
}

function doorOf(row: Row): Tree {
  const { panel, ...other } = row.other;
  return {
    ...other,
    mark: row.mark.trim(),
    quantity: /^\d{1,6}$/.test(row.quantity.trim()) ? Number(row.quantity) : row.quantity,
    opening: { width: row.width.trim(), height: row.height.trim() },
    hinge: row.hinge,
    ...ownTree(row.own),
    ...(row.arched ? { arch: { rise: row.rise.trim(), flat: row.flat.trim() } } : {}),
    ...(row.ownMidRails
      ? {
          midRails: row.midRails.map(({ width, centre }) => ({ width: width.trim(), centre: centre.trim() })),
        }
      : {}),
    ...(panel === undefined && row.species === '' ? {} : { panel: withSpecies(panel, row.species) }),
  };
}

function withSpecies(panel: unknown, species: string): Tree {
  const { species: _before, ...rest } = isTree(panel) ? panel : {};
  return species === '' ? rest : { ...rest, species };
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
  const ways = isTree(tree.ways) ? tree.ways : {};
  if (ways.strip === 'notch' || ways.strip === 'rip') draft.ways.strip = ways.strip;
  if (ways.groove === 'saw' || ways.groove === 'router') draft.ways.groove = ways.groove;
  const moisture = isTree(tree.moisture) ? tree.moisture : {};
  for (const name of ['atBuild', 'low', 'high'] as const) draft.moisture[name] = text(moisture[name]);
  const given = isTree(tree.defaults) ? tree.defaults : {};
  for (const field of DEFAULT_FIELDS) {
    const value = valueAt(given, field);
    if (value !== undefined) draft.defaults[field] = text(value);
  }
  if (given.reveal !== undefined)
    Object.assign(draft.defaults, revealPaths(revealText(given.reveal, emptyDraft(units).defaults.reveal)));
  draft.species = speciesIn(given.panel);
  draft.otherDefaults = { ...given };
  const doors = (Array.isArray(tree.doors) ? tree.doors : []).filter(isTree);
  draft.rows = doors.map((door) => rowOf(door, given));
  return draft;
}

function rowOf(door: Tree, given: Tree): Row {
  const { mark, quantity, opening, arch, hinge, midRails, ...rest } = door;
  const other = without(rest, OWN_PATHS);
  const size = isTree(opening) ? opening : {};
  const arched = isTree(arch);
  return {
    ...emptyRow(),
    mark: text(mark),
    quantity: text(quantity ?? 1),
    width: text(size.width),
    height: text(size.height),
    hinge: (hinge ?? given.hinge) === 'right' ? 'right' : 'left',
    arched,
    rise: arched ? text(arch.rise) : '',
    flat: arched ? text(arch.flat) : '',
    midRails: (Array.isArray(midRails) ? midRails : [])
      .filter(isTree)
      .map((rail) => ({ ...emptyMidRail(), width: text(rail.width), centre: text(rail.centre) })),
    ownMidRails: Array.isArray(midRails),
    species: speciesIn(door.panel),
    own: { ...eachOwn((path) => text(valueAt(door, path))), ...revealPaths(revealText(door.reveal)) },
    // An arch of null takes the job's own arch away from this door.
    other: arch === null ? { ...other, arch } : other,
  };
}

/** A door's fields but those groups of it that the form has fields for. */
function without(door: Tree, paths: readonly string[]): Record<string, unknown> {
  const groups = new Set(paths.map((path) => path.split('.')[0]));
  return Object.fromEntries(Object.entries(door).filter(([name]) => !groups.has(name)));
}

/** The species as the table names it, however the file says it. */
function speciesIn(panel: unknown): string {
  const said = isTree(panel) ? text(panel.species) : '';
  return said === '' ? '' : (findSpecies(said) ?? said);
}

function text(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}
