import type { PinStore } from '../store/documents/pin-store.ts';
import type { Store } from '../store/store.ts';
import type { NetworkDesk } from '../network/network-desk.ts';
import { settleAfter } from './network-routes.ts';
import type { OfficeAccess } from './office-access.ts';
import { problem } from './problem.ts';
import type { Serve } from './serve.ts';
import type { ShellLine } from '../printing/shell-line.ts';
import { deviceOf, isOverNetwork } from './who-asks.ts';

/** The shop's PIN, sessions of those who gave it, and what else it guards that is no data: full screen. */
export function pinRoutes(
  serve: Serve,
  store: Store,
  pin: PinStore,
  access: OfficeAccess,
  shell: ShellLine | null,
  network: NetworkDesk,
): void {
  serve('GET /session', async ({ request, reply }) => {
    if (pin.set) access.apart(request, reply).tell();
    return access.state(request);
  });

  serve('POST /session', async ({ body, request, reply }) => {
    const browser = access.browserOf(request);
    // A browser at this machine may show another cookie each time; a device cannot.
    const tried = await pin.try(body.pin, browser, deviceOf(request) !== null);
    switch (tried.kind) {
      case 'right':
        return access.begin(request, reply);
      case 'unreadable':
        throw problem(401, 'api.pin-unreadable');
      case 'wrong':
        throw problem(401, 'api.pin-wrong');
      case 'wait':
        reply.header('retry-after', tried.seconds);
        throw problem(429, 'api.pin-wait', { seconds: tried.seconds }, { seconds: tried.seconds });
    }
  });

  serve('DELETE /session', async ({ request, reply }) => access.end(request, reply));

  serve('PUT /pin', async ({ body, request, reply }) => {
    const { browser, tell } = access.apart(request, reply);
    await pin.change(body.pin, browser);
    await store.notePin(pin.set);
    await access.endAll();
    await network.pinChanged(isOverNetwork(request));
    settleAfter(network, request, reply);
    const session = await access.begin(request, reply);
    if (pin.set) tell();
    return session;
  });

  serve('POST /kiosk/leave', async () => {
    if (shell === null) throw problem(409, 'api.no-shell');
    shell.tell({ kind: 'leave-full-screen' });
    return { left: true } as const;
  });
}
