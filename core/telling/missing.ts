import { partName, stageName } from './names.ts';
import { type Language, say } from '../words/say.ts';

/** So many are named; of the rest only how many. */
const NAMED = 4;

/** What is missing as people say it: of a part itself "mortise" is "Mortise"; of a door "rail-top: tenon" is "Top rail (Tenon edges)". */
export function missingName(missing: string, language?: Language): string {
  const [part, stage] = missing.split(': ');
  return stage === undefined
    ? stageName(missing, language)
    : `${partName(part ?? '', language)} (${stageName(stage, language)})`;
}

/** The first few of what is missing, and how many more there are. A name may have a comma in it, so they stand apart. */
export function missingNames(missing: readonly string[], language?: Language): string {
  const more = missing.length - NAMED;
  const named = missing.slice(0, NAMED).map((each) => missingName(each, language));
  return `${named.join('; ')}${more > 0 ? ` ${say('message.more', { count: more }, language)}` : ''}`;
}
