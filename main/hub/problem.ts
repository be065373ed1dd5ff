import { say, type Figures, type WordKey } from '#core/words/say.ts';

/** Something that a request asked for and does not get: status, stable code, plain words, figures. */
export class Problem extends Error {
  readonly status: number;
  readonly code: string;
  readonly extra: Readonly<Record<string, unknown>>;

  constructor(
    status: number,
    key: Extract<WordKey, `api.${string}`>,
    figures: Figures = {},
    extra: Readonly<Record<string, unknown>> = {},
  ) {
    super(say(key, figures));
    this.status = status;
    this.code = key.slice('api.'.length);
    this.extra = extra;
  }

  /** As the API sends it. */
  get body(): Record<string, unknown> {
    return { code: this.code, message: this.message, ...this.extra };
  }
}
