import type { Store } from '../store/store.ts';
import type { Announcer } from './events.ts';
import { faulty, problem } from './problem.ts';
import type { Serve } from './serve.ts';

/** The shop: its people, tools and screens. */
export function shopRoutes(serve: Serve, store: Store, announcer: Announcer): void {
  serve('GET /shop', async () => store.shop.shop);

  serve('PUT /shop', async ({ body }) => {
    const saved = await store.change(() => store.shop.update(body.revision, body.shop));
    if (saved.kind === 'faults') throw faulty(saved.faults);
    if (saved.kind === 'stale')
      throw problem(409, 'api.stale', { revision: saved.revision }, { revision: saved.revision });
    announcer.tell({ event: 'shop', data: { revision: saved.shop.revision } });
    return saved.shop;
  });
}
