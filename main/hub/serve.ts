import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import type { BodyOf, GivesOf, ParamsOf, QueryOf } from '#core/api/asked-of.ts';
import { type Endpoint, type EndpointKey, ENDPOINTS } from '#core/api/endpoints.ts';
import type { Frozen } from '#core/api/held-to.ts';
import type { Language } from '#core/words/languages.ts';
import { askedLanguage } from './asked-language.ts';
import { checked } from './checked.ts';
import type { OfficeAccess } from './office-access.ts';
import { problem } from './problem.ts';
import { isOverNetwork } from './who-asks.ts';

/** What a handler gives back: what the table says, or, for what is no JSON, the reply that it has filled. */
export type GivenBy<K extends EndpointKey> =
  GivesOf<K> extends infer G
    ? G extends z.ZodType
      ? Frozen<z.input<G>>
      : G extends null
        ? null
        : G extends 'application/json'
          ? object
          : FastifyReply
    : never;

/** A request that was let in, may do what it asks for, and has passed its schemas. */
export interface Asked<K extends EndpointKey> {
  readonly params: ParamsOf<K>;
  readonly query: [QueryOf<K>] extends [never] ? Readonly<Record<string, never>> : z.infer<QueryOf<K>>;
  readonly body: [BodyOf<K>] extends [never] ? undefined : z.infer<BodyOf<K>>;
  /** In which language it is answered. */
  readonly language: Language;
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
}

/** A handler may fill the reply itself with the text of what the table says, where another thread has made that. */
export type Serve = <K extends EndpointKey>(
  key: K,
  handle: (asked: Asked<K>) => Promise<GivenBy<K> | FastifyReply>,
) => void;

/** Serves the addresses of the table on this scope, each by its own method, limits and schemas. */
export function serveOn(app: FastifyInstance, access: OfficeAccess): Serve {
  return (key, handle) => {
    const endpoint: Endpoint = ENDPOINTS[key];
    const [method = '', url = ''] = key.split(' ');
    app.route({
      method,
      url,
      ...(endpoint.most === undefined ? {} : { bodyLimit: endpoint.most }),
      config: { who: endpoint.who, elsewhere: endpoint.elsewhere === true },
      async onRequest(request) {
        if (endpoint.here === true && isOverNetwork(request)) throw problem(403, 'api.only-here');
        if (endpoint.who === 'office') access.need(request);
      },
      async handler(request, reply) {
        const asked = {
          params: request.params,
          query: endpoint.query === undefined ? {} : checked(endpoint.query, request.query),
          body: endpoint.takes === undefined ? undefined : checked(endpoint.takes, request.body),
          language: askedLanguage(request),
          request,
          reply,
        } as Asked<typeof key>;
        const given: unknown = await handle(asked);
        // Whoever waits for a reply waits until it is sent: nothing is given then.
        if (given === reply || reply.sent) return reply;
        return reply.code(endpoint.status ?? 200).send(given ?? undefined);
      },
    });
  };
}
