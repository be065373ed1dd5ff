import type { z } from 'zod';
import type { ParamsOf, QueryOf } from '#core/api/asked-of.ts';
import type { EndpointKey } from '#core/api/endpoints.ts';
import type { Frozen } from '#core/api/held-to.ts';

/** What fills an address: texts for the names in it, and those that stand behind its "?". */
export interface Filled {
  readonly params?: object;
  readonly query?: object;
}

type Params<K extends EndpointKey> = keyof ParamsOf<K> extends never
  ? { readonly params?: never }
  : { readonly params: ParamsOf<K> };
type Query<K extends EndpointKey> = [QueryOf<K>] extends [never]
  ? { readonly query?: never }
  : { readonly query?: Frozen<z.input<QueryOf<K>>> };

/** What fills the address of this endpoint. */
export type FilledFor<K extends EndpointKey> = Filled & Params<K> & Query<K>;

/** The address of an endpoint, filled in. A text is one step of it, whatever signs it has. */
export function addressOf<K extends EndpointKey>(key: K, filled: FilledFor<K>): string {
  return filledIn(key, filled);
}

/** The same of an endpoint that is not known beforehand. */
export function filledIn(key: EndpointKey, { params, query }: Filled): string {
  const texts = new Map(textsOf(params));
  const path = key.replace(/^\S+ /, '').replace(/:(\w+)/g, (_, name: string) => texts.get(name) ?? '');
  return `/api${path}${searchOf(query)}`;
}

/** What stands behind an address, "?" and all; nothing where nothing is asked. */
export function searchOf(query?: object): string {
  const asked = textsOf(query).map(([name, text]) => `${name}=${text.replaceAll('%2C', ',')}`);
  return asked.length === 0 ? '' : `?${asked.join('&')}`;
}

/** Every text by its name, as a step of an address; half a character, which none can hold, as a sign for it. */
function textsOf(named?: object): [string, string][] {
  return Object.entries<unknown>({ ...named }).flatMap(([name, text]): [string, string][] =>
    typeof text === 'string' ? [[name, encodeURIComponent(text.replace(/\p{Cs}/gu, '\u{fffd}'))]] : [],
  );
}
