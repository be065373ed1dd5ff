import { emptyMidRail, freshKey, type Row } from './draft.ts';
import { SURVEY_FIELDS } from './own-fields.ts';

const NO_SURVEY = Object.fromEntries(SURVEY_FIELDS.map((field) => [`survey.${field}`, '']));
/** As many characters as a mark may have. */
const LONGEST_MARK = 12;

/**
 * A row like another one, to be changed: with the next free mark, or with none where its mark cannot be counted up. A
 * survey is of one opening, so it stays behind.
 */
export function copyRow(row: Row, rows: readonly Row[]): Row {
  const taken = new Set(rows.map(({ mark }) => mark.trim()));
  return {
    ...row,
    key: freshKey(),
    mark: nextMark(row.mark.trim(), taken),
    midRails: row.midRails.map(({ width, centre }) => ({ ...emptyMidRail(), width, centre })),
    own: { ...row.own, ...NO_SURVEY },
    other: { ...row.other },
  };
}

/** The next mark that no row has yet: A1, A2; H-09, H-10; B, C. Empty where a mark ends in neither figures nor one letter. */
export function nextMark(mark: string, taken: ReadonlySet<string>): string {
  let next = countedUp(mark);
  while (next !== '' && taken.has(next)) next = countedUp(next);
  return next.length > LONGEST_MARK ? '' : next;
}

function countedUp(mark: string): string {
  const [, before = '', figures] = /^(.*?)(\d{1,9})$/.exec(mark) ?? [];
  if (figures !== undefined) return before + String(Number(figures) + 1).padStart(figures.length, '0');
  const [, stem = '', letter] = /^(|.*[^A-Za-z])([A-Ya-y])$/.exec(mark) ?? [];
  return letter === undefined ? '' : stem + String.fromCharCode(letter.charCodeAt(0) + 1);
}
