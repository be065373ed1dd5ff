import type { z } from 'zod';
import type { EndpointKey, ENDPOINTS } from './endpoints.ts';

type Table = typeof ENDPOINTS;
type NamesIn<Path> = Path extends `${string}:${infer Name}/${infer Rest}`
  ? Name | NamesIn<`/${Rest}`>
  : Path extends `${string}:${infer Name}`
    ? Name
    : never;
type SchemaAt<K extends EndpointKey, Part extends 'query' | 'takes'> =
  Table[K] extends Readonly<Record<Part, infer S extends z.ZodType>> ? S : never;

/** The names in an endpoint's address, each with the text that stands for it. */
export type ParamsOf<K extends EndpointKey> = Readonly<Record<NamesIn<K>, string>>;

/** The schema of what stands behind the "?" of an endpoint's address; never where it takes nothing there. */
export type QueryOf<K extends EndpointKey> = SchemaAt<K, 'query'>;

/** The schema of the body that an endpoint takes; never where it takes none. */
export type BodyOf<K extends EndpointKey> = SchemaAt<K, 'takes'>;

/** What an endpoint gives: a schema, the media type of what is no JSON of a known form, or null. */
export type GivesOf<K extends EndpointKey> = Table[K]['gives'];
