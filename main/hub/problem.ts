import type { RefusalBody } from '#core/api/marks-api.ts';
import type { Missing } from '#core/marks/stage-state.ts';
import { missingText } from '#core/telling/missing.ts';
import type { Refusal } from '#core/marks/mark.ts';
import type { Fault } from '#core/fields/fault.ts';
import { say, type Figures, type WordKey } from '#core/words/say.ts';
import { type Refused, tellRefusal } from '#core/telling/tell-refusal.ts';

/** Something that a request asked for and does not get: a status, and what is told. */
export class Problem extends Error {
  readonly status: number;
  readonly body: Readonly<Record<string, unknown>>;

  constructor(status: number, body: Readonly<Record<string, unknown>>) {
    super(typeof body.message === 'string' ? body.message : 'refused');
    this.status = status;
    this.body = body;
  }
}

/** With a stable code (the key without its family), plain words, and what else the asker can use. */
export function problem(
  status: number,
  key: Extract<WordKey, `api.${string}`>,
  figures: Figures = {},
  extra: Readonly<Record<string, unknown>> = {},
): Problem {
  return new Problem(status, { code: key.slice('api.'.length), message: say(key, figures), ...extra });
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
  const body: RefusalBody = {
    code,
    message: tellRefusal(code, { ...told, missing }),
    ...(missing === undefined ? {} : { missing: missing.map(missingText) }),
    ...(told.station === undefined ? {} : { station: told.station }),
    ...(told.replacedBy === undefined ? {} : { replacedBy: told.replacedBy }),
  };
  return new Problem(STATUS[code] ?? 409, body);
}

/** A file that is refused: every fault with its place. */
export function faulty(faults: readonly Fault[]): Problem {
  return new Problem(400, {
    errors: faults.map(({ path, code, message }) => ({ path, code, message })),
  });
}
