import { z } from 'zod';
import type { BodyOf, GivesOf } from '#core/api/asked-of.ts';
import { type Endpoint, type EndpointKey, ENDPOINTS } from '#core/api/endpoints.ts';
import type { Frozen } from '#core/api/held-to.ts';
import { faultsBody } from '#core/api/jobs-api.ts';
import { refusal, type RefusalBody } from '#core/api/marks-api.ts';
import { type Filled, filledIn, type FilledFor } from './address.ts';
import type { Elsewhere } from './elsewhere.ts';
import { newerScreens } from '../offline/newer-screens.ts';
import { patienceFor } from './patience.ts';
import { spokenNow } from '#core/words/say.ts';

/** What the hub answered: the thing asked for, a refusal with its code and words, faults of a job file, or nothing at all. */
export type Answer<T> =
  | { readonly kind: 'ok'; readonly value: T }
  | { readonly kind: 'refused'; readonly status: number; readonly refusal: RefusalBody }
  | { readonly kind: 'faults'; readonly faults: z.infer<typeof faultsBody>['errors'] }
  | { readonly kind: 'away' };

/** The endpoints that are asked for JSON, or that something be done and no more. */
export type AskedKey = {
  [K in EndpointKey]: GivesOf<K> extends z.ZodType | null ? K : never;
}[EndpointKey];

type GivenBy<K extends AskedKey> = GivesOf<K> extends infer S extends z.ZodType ? z.infer<S> : null;

/** What comes back from an endpoint. */
export type AnswerOf<K extends AskedKey> = Answer<GivenBy<K>>;

interface Said extends Filled {
  readonly body?: unknown;
  /** Where the hub is asked, where that is not at the address of this page. */
  readonly to?: Elsewhere;
}
type Body<K extends EndpointKey> = [BodyOf<K>] extends [never]
  ? { readonly body?: never }
  : { readonly body: Frozen<z.input<BodyOf<K>>> };
type SaidTo<K extends EndpointKey> = Pick<Said, 'to'> & FilledFor<K> & Body<K>;
/** The endpoints with which nothing need be said. */
type BareKey = { [K in AskedKey]: object extends SaidTo<K> ? K : never }[AskedKey];

/**
 * Asks the hub. The table of its endpoints says what goes with each (what stands for the names in its address, behind its
 * "?", and in its body) and what comes back: every answer is checked as it comes in, and one of another form throws.
 */
export function ask<K extends BareKey>(key: K): Promise<AnswerOf<K>>;
export function ask<K extends AskedKey>(key: K, said: SaidTo<K>): Promise<AnswerOf<K>>;
export async function ask(key: AskedKey, said: Said = {}): Promise<Answer<unknown>> {
  let response: Response;
  let json: unknown;
  try {
    response = await sent(key, said);
    json = response.status === 204 ? null : await response.json();
  } catch {
    return { kind: 'away' };
  }
  if (!response.ok) return refused(response.status, json, said.to === undefined);
  const read = givenBy(key).safeParse(json);
  if (read.success) return { kind: 'ok', value: read.data };
  if (said.to === undefined) newerScreens.strange();
  throw read.error;
}

function sent(key: AskedKey, said: Said): Promise<Response> {
  const { body, to } = said;
  return fetch(`${to?.origin ?? ''}${filledIn(key, said)}`, {
    method: key.replace(/ .*/, ''),
    signal: AbortSignal.timeout(patienceFor(key, said)),
    headers: {
      'accept-language': spokenNow(),
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      ...(to?.token === undefined ? {} : { authorization: `Bearer ${to.token}` }),
    },
    // What is meant for one address goes to no other, and no cookie goes with it.
    ...(to === undefined ? {} : { credentials: 'omit', redirect: 'error' }),
    ...(body === undefined ? {} : { body: body instanceof Blob ? body : JSON.stringify(body) }),
  });
}

const NOTHING = z.null();
/** This device was revoked, or never paired: it is to be paired first, and keeps its unsent marks. */
const NOT_PAIRED = 'not-paired';

/** A page that is on its way there is not sent there again: that would begin its way anew. */
const ON_ITS_WAY_MS = 5000;
let sentAt = -ON_ITS_WAY_MS;

function toBePaired(): void {
  if (performance.now() - sentAt < ON_ITS_WAY_MS) return;
  sentAt = performance.now();
  location.assign('/pairing');
}

function givenBy(key: AskedKey): z.ZodType {
  const { gives }: Endpoint = ENDPOINTS[key];
  return gives instanceof z.ZodType ? gives : NOTHING;
}

function refused(status: number, json: unknown, here: boolean): Answer<never> {
  const faults = faultsBody.safeParse(json);
  if (faults.success) return { kind: 'faults', faults: faults.data.errors };
  const read = refusal.safeParse(json);
  if (read.success && read.data.code === NOT_PAIRED && here) toBePaired();
  return read.success ? { kind: 'refused', status, refusal: read.data } : { kind: 'away' };
}
