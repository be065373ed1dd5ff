import { DOOR_FIELDS } from '#core/job/door-shape.ts';
import { isTree, type Tree } from '#core/fields/read-shape.ts';
import type { OpeningSurvey } from '#core/job/job.ts';
import { isRevealSide, REVEAL_SIDES, revealIn, type RevealSide, revealTree } from './reveal-text.ts';

/** The measures that one door may have of its own in the form, by their path: the others are the whole job's. */
export const OWN_FIELDS = [
  'oversize.width',
  'oversize.height',
  'bottomRail.width',
  'topRail.width',
  'stile.width',
  'thickness',
  'bead',
  'horn',
] as const;
export type OwnField = (typeof OWN_FIELDS)[number];

/** The six measures of an opening's survey. */
export type SurveyField = keyof OpeningSurvey;
export const SURVEY_FIELDS = Object.keys(DOOR_FIELDS.survey.fields) as readonly SurveyField[];

/** All that a door may say of its own behind its row's "More", by path. */
export type OwnPath = OwnField | 'reveal' | RevealSide | `survey.${SurveyField}`;
export const OWN_PATHS: readonly OwnPath[] = [
  ...OWN_FIELDS,
  'reveal',
  ...REVEAL_SIDES,
  ...SURVEY_FIELDS.map((field) => `survey.${field}` as const),
];

/** Is this path one of those that a row has a field for behind its "More"? */
export function isOwnPath(path: string): path is OwnPath {
  return (OWN_PATHS as readonly string[]).includes(path);
}

/** A text for each, made by its path. */
export function eachOwn(text: (path: OwnPath) => string): Record<OwnPath, string> {
  return Object.fromEntries(OWN_PATHS.map((path) => [path, text(path)])) as Record<OwnPath, string>;
}

/** How many of them a door has filled in. */
export function ownCount(own: Readonly<Record<OwnPath, string>>): number {
  return OWN_PATHS.filter((path) => own[path].trim() !== '').length;
}

/** What a job file says of them for a door: those that are filled in, in their groups. */
export function ownTree(own: Readonly<Record<OwnPath, string>>): Tree {
  const tree: Record<string, unknown> = {};
  for (const path of OWN_PATHS) {
    const value = own[path].trim();
    if (value === '' || path === 'reveal' || isRevealSide(path)) continue;
    const [group = '', name] = path.split('.');
    const before = tree[group];
    tree[group] = name === undefined ? value : { ...(isTree(before) ? before : {}), [name]: value };
  }
  const reveal = revealTree(revealIn(own));
  return reveal === undefined ? tree : { ...tree, reveal };
}
