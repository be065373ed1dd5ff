import type { Missing } from '../marks/stage-state.ts';
import type { Refusal } from '../marks/mark.ts';
import { missingNames } from './missing.ts';
import { stageName, stationName } from './names.ts';
import { type Language, say } from '../words/say.ts';

/** What there is to tell of a refused mark or code, in ids as the marks and the plan have them. */
export interface Refused {
  readonly code?: string | undefined;
  readonly stage?: string | undefined;
  readonly station?: string | undefined;
  readonly replacedBy?: string | undefined;
  readonly missing?: readonly Missing[] | undefined;
}

/** Why a mark or a code is refused, in words alone: stages and stations by the names that stand on the screens. */
export function tellRefusal(refusal: Refusal, refused: Refused = {}, language?: Language): string {
  const { code = '', stage, station = '', replacedBy = '', missing = [] } = refused;
  const figures = {
    code,
    stage: stageName(stage ?? '', language),
    station: stationName(station, language),
    replacedBy,
    missing: missingNames(missing, language),
  };
  if (refusal === 'malformed' && stage !== undefined) return say('refusal.no-such-stage', figures, language);
  return say(`refusal.${refusal}`, figures, language);
}
