import { z } from 'zod';
import { type Endpoint, ENDPOINTS } from './endpoints.ts';
import { faultsBody } from './jobs-api.ts';
import { refusal } from './marks-api.ts';

/** The hub's addresses as an OpenAPI 3.1 description, made from the table that the hub serves them by. */
export function openApi(version: string): Record<string, unknown> {
  const paths: Record<string, Record<string, unknown>> = {};
  for (const [key, endpoint] of Object.entries(ENDPOINTS)) {
    const [method = '', path = ''] = key.split(' ');
    const at = `/api${path.replace(/:(\w+)/g, '{$1}')}`;
    paths[at] = { ...paths[at], [method.toLowerCase()]: operation(path, endpoint) };
  }
  return { openapi: '3.1.0', info: { title: 'Shoulderline', version }, paths };
}

/** What a request shows to be let in: at the hub's own machine nothing, but to the office, where a PIN is set. */
const SECURITY = { device: [{}, { device: [] }], office: [{}, { session: [] }, { device: [], session: [] }] };

function operation(path: string, endpoint: Endpoint): Record<string, unknown> {
  const named = [...path.matchAll(/:(\w+)/g)].map(([, name]) => ({
    name,
    in: 'path',
    required: true,
    schema: { type: 'string' },
  }));
  const asked =
    endpoint.query instanceof z.ZodObject
      ? Object.entries(endpoint.query.shape).map(([name, schema]) => ({
          name,
          in: 'query',
          required: false,
          schema: schemaOf(schema as z.ZodType),
        }))
      : [];
  return {
    summary: endpoint.does,
    'x-who': endpoint.who,
    ...(endpoint.here === undefined ? {} : { 'x-here': true }),
    parameters: [...named, ...asked],
    ...(endpoint.takes === undefined
      ? {}
      : { requestBody: { required: true, content: json(schemaOf(endpoint.takes)) } }),
    responses: {
      [String(endpoint.status ?? 200)]: { description: 'As asked.', ...contentOf(endpoint) },
      '4XX': {
        description: 'Refused: a stable code and words; of a file every fault.',
        content: json({ anyOf: [schemaOf(refusal), schemaOf(faultsBody)] }),
      },
    },
    ...(endpoint.who === 'anyone' ? {} : { security: SECURITY[endpoint.who] }),
  };
}

function contentOf({ gives }: Endpoint): Record<string, unknown> {
  if (gives === null) return {};
  if (typeof gives === 'string') return { content: { [gives]: {} } };
  return { content: json(schemaOf(gives)) };
}

function json(schema: unknown): Record<string, unknown> {
  return { 'application/json': { schema } };
}

function schemaOf(schema: z.ZodType): unknown {
  const { $schema: _draft, ...rest } = z.toJSONSchema(schema, { io: 'input' });
  return rest;
}
