import { X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { offerAnswer, pairingAnswer } from '#core/api/network-api.ts';
import type { HubOptions } from '#main/hub/hub.ts';
import { type LiveHub, liveHub } from '../hub/live-hub.ts';
import { askOver, askOverTwo, type Over, type Said } from './ask-over.ts';

export const PIN = '2468';

/** A hub whose network may be switched on at an address of this machine's own. */
export interface NetworkHub extends LiveHub {
  /** Where it is served, "https://127.0.0.2:4711". */
  readonly url: string;
  /** The certificate of the shop's authority. */
  readonly authority: string;
  /** Asks over HTTP/1.1, as a browser that trusts the authority. */
  readonly over: (method: string, path: string, said?: Said) => Promise<Over>;
  /** The same over HTTP/2. */
  readonly overTwo: (method: string, path: string, said?: Said) => Promise<Over>;
  /** The headers of the office at the hub's own machine. */
  office(): Promise<Record<string, string>>;
  /** Pairs a device; gives its cookie and id. */
  pair(name: string): Promise<{ readonly cookie: string; readonly id: string }>;
  /** What a browser's page needs to be paired: what it asks, and what its worker answers. */
  proof(): Promise<{ readonly ask: string; readonly proof: string }>;
  offer(): Promise<z.infer<typeof offerAnswer>>;
}

export const TOLD = { on: null, hosts: ['127.0.0.2'], port: 0, trustPort: 0 } as const;
const KEYS = z.object({ authority: z.object({ certificate: z.string() }) });

/** A hub with a PIN whose network is on. */
export async function networkHub(options: Partial<HubOptions> = {}): Promise<NetworkHub> {
  const live = await liveHub({ network: TOLD, ...options });
  const set = await live.ask('PUT', '/pin', { pin: PIN });
  let cookie = (set.headers.get('set-cookie') ?? '').replace(/;.*/, '');
  const office = async () => {
    if ((await live.ask('GET', '/session', undefined, { cookie })).body.open !== true) {
      const answer = await live.ask('POST', '/session', { pin: PIN });
      cookie = (answer.headers.get('set-cookie') ?? '').replace(/;.*/, '');
    }
    return { cookie };
  };
  const switched = await live.ask('PUT', '/network', { on: true }, await office());
  if (switched.body.state !== 'on')
    throw new Error(`the network is not on: ${JSON.stringify(switched.body)}`);
  const url = () => live.hub.network.addresses[0]?.screens ?? '';
  const authority = () =>
    KEYS.parse(JSON.parse(readFileSync(join(live.data, 'network-keys.json'), 'utf8'))).authority.certificate;
  const over = (method: string, path: string, said?: Said) => askOver(url(), authority(), method, path, said);
  const offer = async () =>
    offerAnswer.parse((await live.ask('POST', '/network/offers', {}, await office())).body);
  const proof = async () => {
    const { ask } = pairingAnswer.parse((await over('GET', '/api/pairing')).body);
    const script = await over('GET', `/pairing/worker.js?ask=${ask}`, {
      headers: { 'sec-fetch-dest': 'serviceworker' },
    });
    return { ask, proof: /postMessage\('([\w-]+)'\)/.exec(String(script.body.text))?.[1] ?? '' };
  };
  return {
    ...live,
    get hub() {
      return live.hub;
    },
    get url() {
      return url();
    },
    get authority() {
      return authority();
    },
    over,
    overTwo: (method, path, said) => askOverTwo(url(), authority(), method, path, said),
    office,
    offer,
    proof,
    async pair(name) {
      const { code } = await offer();
      const body = { secret: code, name, station: 'table-saw', ...(await proof()) };
      const answer = await over('POST', '/api/pairing', { body });
      if (answer.status !== 201) throw new Error(JSON.stringify(answer.body));
      const id = live.hub.network.devices.all.at(-1)?.id ?? '';
      return { cookie: String(answer.headers['set-cookie']).replace(/;.*/, ''), id };
    },
  };
}

/** The fingerprint of a certificate as Node reckons it. */
export function nodeFingerprint(pem: string): string {
  return new X509Certificate(pem).fingerprint256;
}
