import type { EndpointKey } from '#core/api/endpoints.ts';
import { type Filled, searchOf } from './address.ts';

const USUAL_MS = 8000;
/** For what the hub has to reckon first. */
const RECKONING_MS = 30_000;

const PATIENCE_MS: Readonly<Partial<Record<EndpointKey | `${EndpointKey}?${string}`, number>>> = {
  'GET /jobs/:id': RECKONING_MS,
  'GET /jobs/:id?why=1': RECKONING_MS,
  'GET /jobs/:id/doors': RECKONING_MS,
  'GET /jobs/:id/doors/:door': RECKONING_MS,
  'GET /jobs/:id/doors/:door?why=1': RECKONING_MS,
  'GET /jobs/:id/stickers.pdf': RECKONING_MS,
  'POST /backups': RECKONING_MS,
  'POST /backups/:name/restore': RECKONING_MS,
  // A stick may be slow, or hang until it is taken for gone.
  'PUT /backups/elsewhere': 120_000,
  'POST /backups/elsewhere/:name/restore': 600_000,
  // A whole shop's data come in and are read back.
  'POST /import': 600_000,
};

/** How long an answer of this endpoint is waited for, in milliseconds. */
export function patienceFor(key: EndpointKey, { query }: Filled = {}): number {
  return PATIENCE_MS[`${key}?${searchOf(query).slice(1)}`] ?? PATIENCE_MS[key] ?? USUAL_MS;
}
