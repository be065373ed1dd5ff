import type { RefusalBody } from '#core/api/marks-api.ts';
import type { Missing } from '#core/marks/stage-state.ts';
import { missingText } from '#core/telling/missing.ts';
import type { Refusal } from '#core/marks/mark.ts';
import type { Fault } from '#core/fields/fault.ts';
import type { FigureTable } from '#core/plan/figure.ts';
import { speakFaults } from '#core/telling/speak-faults.ts';
import { speakSaying } from '#core/telling/speak-saying.ts';
import { type Refused, tellRefusal } from '#core/telling/tell-refusal.ts';
import type { Language, WordKey } from '#core/words/say.ts';

/** What is answered, in the words of a language. */
type BodyIn = (language: Language) => Readonly<Record<string, unknown>>;

/** Something that a request asked for and does not get: a status, and what is told in the language that it asks in. */
export class Problem extends Error {
  readonly status: number;
  readonly bodyIn: BodyIn;

  constructor(status: number, bodyIn: BodyIn) {
    const { message } = bodyIn('en');
    super(typeof message === 'string' ? message : 'refused');
    this.status = status;
    this.bodyIn = bodyIn;
  }
}

/** With a stable code (the key without its family), plain words, and what else the asker can use. */
export function problem(
  status: number,
  key: Extract<WordKey, `api.${string}`>,
  figures: FigureTable = {},
  extra: Readonly<Record<string, unknown>> = {},
): Problem {
  return new Problem(status, (language) => ({
    code: key.slice('api.'.length),
    message: speakSaying({ words: key, figures }, language),
    ...extra,
  }));
}

const STATUS: Readonly<Partial<Record<Refusal, number>>> = {
  malformed: 400,
  'bad-check': 400,
  'unknown-code': 404,
};

/** A mark or a code that is refused: its stable code, its words, and the ids of what is missing. */
export function refusal(
  code: Refusal,
  told: Omit<Refused, 'missing'> = {},
  missing?: readonly Missing[],
): Problem {
  const bodyIn = (language: Language): RefusalBody => ({
    code,
    message: tellRefusal(code, { ...told, missing }, language),
    ...(missing === undefined ? {} : { missing: missing.map(missingText) }),
    ...(told.station === undefined ? {} : { station: told.station }),
    ...(told.replacedBy === undefined ? {} : { replacedBy: told.replacedBy }),
  });
  return new Problem(STATUS[code] ?? 409, bodyIn);
}

/** A file that is refused: every fault with its place. */
export function faulty(faults: readonly Fault[]): Problem {
  return new Problem(400, (language) => ({ errors: speakFaults(faults, language) }));
}
