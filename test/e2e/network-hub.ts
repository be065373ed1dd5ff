import { X509Certificate, createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { networkAnswer, offerAnswer, pairingAnswer } from '#core/api/network-api.ts';
import { askOver, type Said } from '../main/network/ask-over.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';

export const PIN = '2468';
const HERE = {
  SHOULDERLINE_NETWORK_HOST: '127.0.0.2',
  SHOULDERLINE_NETWORK_PORT: '0',
  SHOULDERLINE_TRUST_PORT: '0',
};
const KEY = z.object({ certificate: z.string() });
const KEYS = z.object({ authority: KEY, leaf: KEY });

/** A built hub with the demo job and a PIN, whose network is on at an address of this machine's own. */
export class NetworkHub {
  #hub: HubProcess;
  readonly #cookie: string;
  /** Where screens are served over the network, and where the page with the certificate is. */
  readonly screens: string;
  readonly trust: string;

  private constructor(hub: HubProcess, cookie: string, screens: string, trust: string) {
    this.#hub = hub;
    this.#cookie = cookie;
    this.screens = screens;
    this.trust = trust;
  }

  static async start(): Promise<NetworkHub> {
    const hub = await startHubProcess(freshData(), 0, ['--demo'], HERE);
    const json = { 'content-type': 'application/json' };
    const set = await fetch(`${hub.url}/api/pin`, {
      method: 'PUT',
      headers: json,
      body: JSON.stringify({ pin: PIN }),
    });
    const cookie = (set.headers.get('set-cookie') ?? '').replace(/;.*/, '');
    const on = await fetch(`${hub.url}/api/network`, {
      method: 'PUT',
      headers: { ...json, cookie },
      body: JSON.stringify({ on: true }),
    });
    const { addresses } = networkAnswer.parse(await on.json());
    return new NetworkHub(hub, cookie, addresses[0]?.screens ?? '', addresses[0]?.trust ?? '');
  }

  /** Ends it as a wall switch does, and starts it again at the same addresses. */
  async killed(): Promise<void> {
    await this.#hub.end('SIGKILL');
    await this.back();
  }

  /** The process that it runs in now. */
  get pid(): number {
    return this.#hub.pid;
  }

  /** The certificate of the shop's authority. */
  get authority(): string {
    return KEYS.parse(JSON.parse(readFileSync(join(this.data, 'network-keys.json'), 'utf8'))).authority
      .certificate;
  }

  /** Pairs a device; gives the cookie that tells it from then on. */
  async pair(name: string): Promise<string> {
    const ask = (method: string, path: string, said: Said = {}) =>
      askOver(this.screens, this.authority, method, path, said);
    const { code } = await this.offer();
    const asked = pairingAnswer.parse((await ask('GET', '/api/pairing')).body).ask;
    const script = await ask('GET', `/pairing/worker.js?ask=${asked}`, {
      headers: { 'sec-fetch-dest': 'serviceworker' },
    });
    const proof = /postMessage\('([\w-]+)'\)/.exec(String(script.body.text))?.[1] ?? '';
    const paired = await ask('POST', '/api/pairing', {
      body: { secret: code, ask: asked, proof, name, station: 'milling' },
    });
    if (paired.status !== 201) throw new Error(JSON.stringify(paired.body));
    return String(paired.headers['set-cookie']).replace(/;.*/, '');
  }

  /** Where it is asked at its own machine. */
  get url(): string {
    return this.#hub.url;
  }

  /** Stops the hub where it is, as a cut cable would seem to, or lets it go on. */
  hold(held: boolean): void {
    process.kill(this.#hub.pid, held ? 'SIGSTOP' : 'SIGCONT');
  }

  get data(): string {
    return this.#hub.data;
  }

  /** As the office at the hub's own machine. */
  async ask(method: string, path: string, body?: unknown): Promise<unknown> {
    const answer = await fetch(`${this.url}/api${path}`, {
      method,
      headers: {
        cookie: this.#cookie,
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    if (!answer.ok) throw new Error(`${method} ${path}: ${answer.status}`);
    return answer.json();
  }

  async offer(): Promise<z.infer<typeof offerAnswer>> {
    return offerAnswer.parse(await this.ask('POST', '/network/offers', {}));
  }

  /** What the office knows of the network. */
  async network(): Promise<z.infer<typeof networkAnswer>> {
    return networkAnswer.parse(await this.ask('GET', '/network'));
  }

  async devices(): Promise<z.infer<typeof networkAnswer>['devices']> {
    return (await this.network()).devices;
  }

  /** By what a browser can be told to trust this hub alone: SHA-256 of its public key. */
  pin(): string {
    const { leaf } = KEYS.parse(JSON.parse(readFileSync(join(this.data, 'network-keys.json'), 'utf8')));
    const key = new X509Certificate(leaf.certificate).publicKey.export({ type: 'spki', format: 'der' });
    return createHash('sha256').update(key).digest('base64');
  }

  /** It answers nothing until it is back. */
  async away(signal: 'SIGKILL' | 'SIGTERM' = 'SIGTERM'): Promise<void> {
    await this.#hub.end(signal);
  }

  /** On its folder and at its addresses, as after a restart; resolves as soon as it says that the network is on. */
  async back(): Promise<void> {
    this.#hub = await startHubProcess(this.data, Number(new URL(this.url).port), [], {
      SHOULDERLINE_NETWORK_HOST: new URL(this.screens).hostname,
      SHOULDERLINE_NETWORK_PORT: new URL(this.screens).port,
      SHOULDERLINE_TRUST_PORT: new URL(this.trust).port,
    });
    await this.#hub.says(/^NETWORK https:/m);
  }

  async stop(): Promise<void> {
    await this.#hub.end('SIGTERM');
    removeData(this.data);
  }
}
