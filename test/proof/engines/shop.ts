import { NetworkHub } from '../../e2e/network-hub.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from '../../e2e/hub-process.ts';

/** A built hub with the demo job, as a screen and its test come to it. */
export interface Shop {
  /** Where screens find it. */
  readonly screens: string;
  /** Where it is asked at its own machine. */
  readonly url: string;
  /** The certificate of its authority, as PEM; null where screens need none. */
  readonly authority: string | null;
  /** A code by which one more device is paired; null where no device has to be. */
  code(): Promise<string | null>;
  /** Ends it as a wall switch does. */
  cut(): Promise<void>;
  /** Starts it again on the same addresses and data. */
  again(): Promise<void>;
  stop(): Promise<void>;
}

/** Screens at the hub's own machine. */
export async function shopHere(): Promise<Shop> {
  const data = freshData();
  let hub: HubProcess = await startHubProcess(data, 0, ['--demo']);
  const { url } = hub;
  return {
    screens: url,
    url,
    authority: null,
    code: async () => null,
    cut: async () => void (await hub.end('SIGKILL')),
    again: async () => void (hub = await startHubProcess(data, Number(new URL(url).port))),
    async stop() {
      await hub.end('SIGTERM');
      removeData(data);
    },
  };
}

/** Screens over the shop's network. */
export async function shopOverNetwork(): Promise<Shop> {
  const hub = await NetworkHub.start();
  return {
    screens: hub.screens,
    url: hub.url,
    authority: hub.authority,
    code: async () => (await hub.offer()).code,
    cut: () => hub.away('SIGKILL'),
    again: () => hub.back(),
    stop: () => hub.stop(),
  };
}
