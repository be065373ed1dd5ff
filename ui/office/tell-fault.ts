import { isTree } from '#core/fields/read-shape.ts';
import type { PrintedFault } from '#core/fields/fault.ts';
import { hasWords, say } from '#core/words/say.ts';
import { tellLength } from '../shared/tell-length.ts';
import { type Draft, isDefaultField, saysItself } from './draft.ts';
import { fileOf } from './draft-file.ts';
import { isOwnPath } from './own-fields.ts';
import { isRevealSide, type RevealSide } from './reveal-text.ts';

/** A fault as the form tells it: under which field, by that field's label and the door's mark, in the shop's words. */
export interface Told {
  /** Where it stands in the job file. */
  readonly path: string;
  /** The field: "job", "row.0.width", "row.0.midRails.1.centre", "defaults.horn"; "row.0." where the row has none for it. */
  readonly place: string;
  readonly mark: string;
  readonly label: string;
  readonly words: string;
  /** Something is not typed or not typed rightly; otherwise it is typed, and no door comes of it. */
  readonly typing: boolean;
}

/** Faults that stand in the door's own row though core names a field of the whole job. */
const OF_THE_ROW: Readonly<Partial<Record<string, string>>> = {
  'sight-width': 'width',
  'sight-height': 'height',
};

/** What the row has a field for; what else a file brought is told below its fields. */
const ROW_FIELDS =
  /^(mark|quantity|width|height|rise|flat|hinge|survey|oversize|midRails(\[\d+\].*)?|panel\.species)$/;

/** Every fault of a form, in its words; the same fault of several doors at one field is told once, with their marks. */
export function tellFaults(faults: readonly PrintedFault[], draft: Draft): Told[] {
  const file = fileOf(draft);
  const told = new Map<string, Told>();
  for (const fault of faults) {
    const one = tell(fault, draft, file);
    const key = `${one.place} ${one.words}`;
    const same = told.get(key);
    const marks = [same?.mark ?? '', one.mark].filter((mark) => mark !== '');
    told.set(key, { ...one, mark: [...new Set(marks)].join(', ') });
  }
  return [...told.values()];
}

function tell(fault: PrintedFault, draft: Draft, file: object): Told {
  const door = /^doors\[(\d+)\]\.?(.*)$/.exec(fault.path);
  const typed = typedAt(file, fault.path);
  const { words, typing } = wordsOf(fault, typed, draft);
  if (door === null) {
    const path = typedReveal(fault.path.replace(/^defaults\./, ''), draft.defaults);
    const place = fault.path.startsWith('defaults.') ? `defaults.${path}` : fault.path;
    return { path: fault.path, place, mark: '', label: labelOf(place), words, typing };
  }
  const k = Number(door[1]);
  const row = draft.rows[k];
  const named = OF_THE_ROW[fault.code] ?? (door[2] ?? '').replace(/^(opening|arch)\./, '');
  const path = typedReveal(named, saysItself(row, named) ? (row?.own ?? draft.defaults) : draft.defaults);
  const mark = row?.mark.trim() ?? '';
  const general = isDefaultField(path) && !saysItself(row, path);
  const fields = isOwnPath(path) || ROW_FIELDS.test(path);
  const here = fields && (row?.arched === true || !/^(rise|flat)$/.test(path));
  const place = general ? `defaults.${path}` : `row.${k}.${here ? path.replace(/\[(\d+)\]/g, '.$1') : ''}`;
  return {
    path: fault.path,
    place,
    mark: mark === '' ? say('form.row', { k: k + 1 }) : mark,
    label: labelOf(path),
    words,
    typing,
  };
}

/** Where a side's reveal is typed: in its own field, or in that of all sides. */
function typedReveal(path: string, texts: Readonly<Record<RevealSide | 'reveal', string>>): string {
  return isRevealSide(path) && texts[path].trim() === '' && texts.reveal.trim() !== '' ? 'reveal' : path;
}

/** What stands at a fault's path, "doors[0].opening.width". */
function typedAt(file: object, path: string): unknown {
  return path
    .split(/[.[\]]+/)
    .filter((name) => name !== '')
    .reduce<unknown>(
      (step, name) =>
        Array.isArray(step) ? (step as unknown[])[Number(name)] : isTree(step) ? step[name] : undefined,
      file,
    );
}

/** The label of a field by its path in the job file; nothing where it has none. */
export function labelOf(path: string): string {
  const name = path.replace(/^defaults\./, '').replace(/^midRails\[\d+\]/, 'midRails');
  for (const key of [`office.field.${name}`, `form.label.${name}`, `office.${name}`])
    if (hasWords(key)) return say(key);
  return '';
}

function wordsOf(
  { code, message }: PrintedFault,
  typed: unknown,
  { units }: Draft,
): { words: string; typing: boolean } {
  const text = typeof typed === 'string' || typeof typed === 'number' ? String(typed) : '';
  const typing = (words: string) => ({ words, typing: true });
  if (code.startsWith('length-')) return typing(tellLength(text, units) ?? message);
  switch (code) {
    case 'negative':
      return typing(say('told.negative'));
    case 'zero':
      return typing(say('told.zero'));
    case 'required':
      return typing(say('told.empty'));
    case 'text-length':
      return typing(text.trim() === '' ? say('told.empty') : say('told.text-long'));
    case 'job-dots':
      return typing(say('told.job-dots'));
    case 'text-control':
      return typing(say('told.text-control'));
    case 'mark-twice':
      return typing(say('told.mark-twice', { mark: text }));
    case 'quantity':
      return typing(say('told.quantity'));
    case 'date':
      return typing(say('told.date'));
    case 'too-many':
      return typing(say('told.too-many'));
    default:
      return { words: message, typing: false };
  }
}
