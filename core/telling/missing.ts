import type { Missing } from '../marks/stage-state.ts';
import { type Language, say } from '../words/say.ts';
import { partName, stageName } from './names.ts';

/** So many are named; of the rest only how many. */
const NAMED = 4;

/** What is missing as the API says it: a stage by its id, of another part "rail-top: tenon". */
export function missingText({ part, stage }: Missing): string {
  return part === undefined ? stage : `${part}: ${stage}`;
}

/** What is missing as people say it: "Cut the mortises", or of another part "Top rail (Cut the tenon edges)". */
export function missingName({ part, stage }: Missing, language?: Language): string {
  const name = stageName(stage, language);
  return part === undefined ? name : `${partName(part, language)} (${name})`;
}

/** The first few of what is missing, and how many more there are. A name may have a comma in it, so they stand apart. */
export function missingNames(missing: readonly Missing[], language?: Language): string {
  const more = missing.length - NAMED;
  const named = missing.slice(0, NAMED).map((each) => missingName(each, language));
  return `${named.join('; ')}${more > 0 ? ` ${say('message.more', { count: more }, language)}` : ''}`;
}
