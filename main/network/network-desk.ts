import type { IncomingMessage, Server } from 'node:http';
import type { Http2SecureServer, Http2ServerRequest } from 'node:http2';
import type { NetworkState } from '#core/api/network-api.ts';
import type { Language } from '#core/words/languages.ts';
import { codeOf, type FilePort, wordsOf } from '../store/files/file-port.ts';
import { Turns } from '../store/files/turns.ts';
import { DeviceStore } from './device-store.ts';
import { DeviceWays } from './device-ways.ts';
import { HandOvers } from './hand-overs.ts';
import { type Certified, KeptKeys } from './kept-keys.ts';
import { READERS, STRANGERS } from './limits.ts';
import { type Listening, listenAt } from './listening.ts';
import { NetworkChoice } from './network-choice.ts';
import { localName, ownAddresses } from './own-addresses.ts';
import { PairingOffers } from './pairing-offers.ts';
import { PairingProof } from './pairing-proof.ts';
import { endAtOnce, plainServer, secureServer, type Shown } from './servers.ts';
import { StableName } from './stable-name.ts';
import { type Connection, Strangers } from './strangers.ts';

/** What the program is told of the network from outside. */
export interface NetworkTold {
  /** Whether it is to be on, whatever the office says; null leaves it to the office. */
  readonly on: boolean | null;
  /** At which addresses it listens; null takes this machine's own private ones. */
  readonly hosts: readonly string[] | null;
  readonly port: number;
  readonly trustPort: number;
  /** By what name it is called in a network without a name server; null for none. Where nothing is said it is the machine's own, but not where only the machine itself is served. */
  readonly name?: string | null;
}

/** What the program is told where nobody has said anything. */
export const NOTHING_TOLD: NetworkTold = { on: null, hosts: null, port: 7518, trustPort: 7519 };

/** The service over the network, made anew each time that it is switched on. */
export interface OverNetwork {
  readonly server: Http2SecureServer;
  readonly hosts: () => readonly string[];
  /** May this be answered? If not, its connection is being ended. */
  readonly mayAsk: (request: IncomingMessage | Http2ServerRequest) => boolean;
}

export interface NetworkParts {
  readonly port: FilePort;
  readonly data: string;
  readonly told: NetworkTold;
  /** Is there a PIN that can be given? Without one there is no network. */
  readonly pin: () => boolean;
  /** Serves the hub's addresses by this server; gives what ends that. */
  readonly serve: (over: OverNetwork) => Promise<() => Promise<void>>;
  /** Told where it can be reached, or why it cannot: a line each. */
  readonly say?: (line: string) => void;
  readonly report: (trouble: string, error: unknown) => void;
  /** In which language a request is answered. */
  readonly language: (request: IncomingMessage) => Language;
  readonly headerLimit: number;
  readonly now?: () => number;
}

/** Where screens are served, and where the page with the certificate is. */
export interface Served {
  readonly screens: string;
  readonly trust: string | null;
}

/** The network as it stands open. */
interface Open {
  readonly server: Http2SecureServer;
  readonly end: () => Promise<void>;
  addresses: readonly string[];
  screens: Listening;
  certified: Certified;
  readonly strangers: Strangers;
  readonly trustServer: Server;
  readonly readers: Strangers;
  trust: Listening | null;
}

const LOOK_MS = 60_000;

/** The shop's network: off until the office or whoever starts the program switches it on, and never on without a PIN. */
export class NetworkDesk {
  readonly #parts: NetworkParts;
  readonly #choice: NetworkChoice;
  readonly #now: () => number;
  readonly #turns = new Turns();
  readonly #name = new StableName();
  #devices: DeviceStore;
  #ways: DeviceWays;
  readonly handOvers: HandOvers;
  readonly offers: PairingOffers;
  readonly proof: PairingProof;
  #open: Open | null = null;
  #state: NetworkState = 'off';
  #reason: string | null = null;
  #fingerprint: string | null = null;
  #said = '';
  #timer: ReturnType<typeof setInterval> | null = null;
  #stopped = false;

  private constructor(parts: NetworkParts, choice: NetworkChoice, devices: DeviceStore, ways: DeviceWays) {
    this.#parts = parts;
    this.#choice = choice;
    this.#now = parts.now ?? Date.now;
    this.#devices = devices;
    this.#ways = ways;
    this.handOvers = new HandOvers(this.#now);
    this.offers = new PairingOffers(this.#now);
    this.proof = new PairingProof(this.#now);
  }

  /** Reads what is kept; opens nothing yet. */
  static async open(parts: NetworkParts): Promise<NetworkDesk> {
    const { port, data, now } = parts;
    const devices = await DeviceStore.open(port, data, now);
    const paired = (): DeviceStore => desk?.devices ?? devices;
    let desk: NetworkDesk | null = null;
    const ways = await DeviceWays.open(port, data, (device) => paired().has(device));
    for (const { trouble } of [devices, ways])
      if (trouble !== null) parts.report('kept an unreadable list of devices aside', trouble);
    desk = new NetworkDesk(parts, await NetworkChoice.open(port, data), devices, ways);
    return desk;
  }

  /** Brings the network to what is wanted, and looks again each minute whether addresses or certificate have changed. */
  async start(lookMs = LOOK_MS): Promise<void> {
    await this.settle();
    this.#timer = setInterval(() => void this.settle(), lookMs);
    this.#timer.unref();
  }

  get ways(): DeviceWays {
    return this.#ways;
  }

  get devices(): DeviceStore {
    return this.#devices;
  }

  get state(): NetworkState {
    return this.#state;
  }

  /** Why it is wanted and not on. */
  get reason(): string | null {
    return this.#reason;
  }

  /** Was the program told from outside, so that nobody else can choose? */
  get told(): boolean {
    return this.#parts.told.on !== null;
  }

  /** By what a person can tell the shop's certificate; null while it is off. */
  get fingerprint(): string | null {
    return this.#fingerprint;
  }

  /** Where it is served now, by each of its addresses. */
  get addresses(): readonly Served[] {
    const open = this.#open;
    return open === null ? [] : open.addresses.map((address) => servedBy(open, address));
  }

  /** The same by the name that stays when addresses change; null where that does not lead here. */
  get named(): Served | null {
    const { stands } = this.#name;
    return this.#open === null || stands === null ? null : servedBy(this.#open, stands);
  }

  /** All of them, the one by name first. */
  get served(): readonly Served[] {
    const { named } = this;
    return named === null ? this.addresses : [named, ...this.addresses];
  }

  /** May anything be asked over the network now? */
  get admits(): boolean {
    return this.#wanted && this.#parts.pin() && !this.#stopped;
  }

  get #wanted(): boolean {
    return this.#parts.told.on ?? this.#choice.on;
  }

  /** By this connection a device has shown itself; null: somebody has asked who is none. */
  shows(connection: Connection | undefined, device: string | null): void {
    this.#open?.strangers.shows(connection, device);
  }

  /** Takes a device away; its connections end a moment after what is told by them. False where there is none of this id. */
  async revoke(id: string): Promise<boolean> {
    try {
      return await this.devices.revoke(id);
    } finally {
      if (!this.devices.has(id)) this.#open?.strangers.endOf(id);
    }
  }

  /** Switches it on or off, on disk first; it has taken effect when this is done, but for what `later` says. */
  async choose(on: boolean, later = false): Promise<void> {
    await this.#choice.choose(on);
    if (!on) this.offers.end();
    if (!later) await this.settle();
  }

  /** A PIN was set or taken away: with it goes the network, until somebody switches it on again. */
  async pinChanged(later = false): Promise<void> {
    if (!this.#parts.pin()) await this.choose(false, later);
    else if (!later) await this.settle();
  }

  /** Opens what is to be open and closes what is not; what fails is told of, and tried again. Never rejects. */
  settle(): Promise<void> {
    return this.#turns.take(async () => {
      try {
        await this.#settle();
      } catch (error) {
        await this.#close();
        this.#is('failed', codeOf(error) === undefined ? wordsOf(error).slice(0, 160) : reasonOf(error));
        this.#parts.report('the network could not be opened', error);
      }
    });
  }

  /** Does this, which puts other keys and devices in place, while the network is shut; then opens it by those. */
  async replacing<T>(work: () => Promise<T>): Promise<T> {
    try {
      return await this.#turns.take(async () => {
        const { port, data, now } = this.#parts;
        await this.#close();
        this.offers.end();
        await this.#devices.retire();
        try {
          return await work();
        } finally {
          this.#devices = await DeviceStore.open(port, data, now);
          this.#ways = await DeviceWays.open(port, data, (device) => this.#devices.has(device));
        }
      });
    } finally {
      await this.settle();
    }
  }

  async stop(): Promise<void> {
    this.#stopped = true;
    if (this.#timer !== null) clearInterval(this.#timer);
    await this.#turns.take(() => this.#close());
    await this.devices.close().catch(() => undefined);
  }

  async #settle(): Promise<void> {
    if (this.#stopped || !this.#wanted) {
      await this.#close();
      return this.#is('off');
    }
    if (!this.#parts.pin()) {
      await this.#close();
      return this.#is('no-pin');
    }
    const addresses = this.#parts.told.hosts ?? ownAddresses();
    if (addresses.length === 0) {
      await this.#close();
      return this.#is('no-address');
    }
    const name = this.#called();
    const names = [...addresses, ...(name === null ? [] : [name])];
    const keys = await KeptKeys.open(this.#parts.port, this.#parts.data);
    const certified = await keys.certified(names, shopName(name), this.#now());
    if (this.#open === null) await this.#openAt(addresses, certified);
    else await this.#follow(this.#open, addresses, certified);
    const { fingerprintOf } = await import('./certificates.ts');
    this.#fingerprint = fingerprintOf(certified.authority);
    this.#is('on');
    // Nobody waits for a name.
    void this.#name.follow(this.#announces(addresses) ? name : null, addresses);
  }

  async #openAt(addresses: readonly string[], certified: Certified): Promise<void> {
    const { told, headerLimit, serve, language } = this.#parts;
    const strangers = new Strangers(STRANGERS);
    const server = secureServer(shown(certified), headerLimit);
    const end = await serve({
      server,
      hosts: () => this.#hosts(),
      mayAsk(request) {
        const may = strangers.mayAsk(request.socket);
        if (!may) endAtOnce(request);
        return may;
      },
    });
    let screens: Listening;
    try {
      screens = await listenAt(addresses, told.port, server, strangers);
    } catch (error) {
      await end();
      throw error;
    }
    const { trustPages } = await import('./trust-page.ts');
    const trustPage = trustPages(certified.authority);
    const trustServer = plainServer((request, answer) => trustPage(request, answer, language(request)));
    const readers = new Strangers(READERS);
    this.#open = { server, end, addresses, screens, certified, strangers, trustServer, readers, trust: null };
    // Only now is it known by which names it may be asked for.
    screens.open();
    this.#open.trust = await this.#listenForTrust(addresses, this.#open);
  }

  /** Without its page the network is still on: whoever trusts the certificate already needs it no more. */
  async #listenForTrust(
    addresses: readonly string[],
    { trustServer, readers }: Open,
    report = true,
  ): Promise<Listening | null> {
    try {
      const trust = await listenAt(addresses, this.#parts.told.trustPort, trustServer, readers);
      trust.open();
      return trust;
    } catch (error) {
      if (report) this.#parts.report('the page with the shop’s certificate could not be opened', error);
      return null;
    }
  }

  /** Goes on at the addresses that this machine has now, with the certificate for them. */
  async #follow(open: Open, addresses: readonly string[], certified: Certified): Promise<void> {
    if (certified.leaf.certificate !== open.certified.leaf.certificate) {
      open.server.setSecureContext(shown(certified));
      open.certified = certified;
    }
    if (addresses.join() === open.addresses.join()) {
      // Something else may have held its port, and be gone.
      open.trust ??= await this.#listenForTrust(addresses, open, false);
      return;
    }
    await open.screens.close();
    await open.trust?.close();
    open.screens = await listenAt(addresses, open.screens.port, open.server, open.strangers);
    open.addresses = addresses;
    open.screens.open();
    open.trust = await this.#listenForTrust(addresses, open);
  }

  async #close(): Promise<void> {
    const open = this.#open;
    this.#open = null;
    this.#fingerprint = null;
    if (open === null) return;
    await this.#name.close();
    await open.trust?.close();
    await open.end();
    await open.screens.close();
    open.server.close();
    open.trustServer.close();
    open.strangers.close();
    open.readers.close();
  }

  #hosts(): readonly string[] {
    const open = this.#open;
    if (open === null) return [];
    const name = this.#called();
    const { port } = open.screens;
    return [...open.addresses, ...(name === null ? [] : [name])].map((each) => at(each, port, 443));
  }

  #called(): string | null {
    const { name } = this.#parts.told;
    return name === undefined ? localName() : name;
  }

  /** Is the name to be told in the network? What only the machine itself can reach is told to nobody unless somebody said so. */
  #announces(addresses: readonly string[]): boolean {
    return this.#parts.told.name !== undefined || !addresses.every((each) => each.startsWith('127.'));
  }

  #is(state: NetworkState, reason: string | null = null): void {
    this.#state = state;
    this.#reason = reason;
    const lines =
      state === 'on'
        ? this.addresses.map(({ screens }) => `NETWORK ${screens}`)
        : state === 'off'
          ? []
          : [`NETWORK off: ${WHY[state]}${reason === null ? '' : `: ${reason}`}`];
    if (lines.join('\n') === this.#said) return;
    this.#said = lines.join('\n');
    for (const line of lines) this.#parts.say?.(line);
  }
}

const WHY = {
  'no-pin': 'it needs a PIN; set one in the office',
  'no-address': 'this machine has no address in a private network',
  failed: 'it could not be opened',
};

function shown({ leaf, authority }: Certified): Shown {
  return { key: leaf.key, cert: `${leaf.certificate}\n${authority}\n` };
}

/** What the shop's certificate is called by: the machine's name. */
function shopName(name: string | null): string {
  return name?.replace(/\.local$/, '') ?? 'shop';
}

function servedBy({ screens, trust }: Open, address: string): Served {
  return {
    screens: `https://${at(address, screens.port, 443)}`,
    trust: trust === null ? null : `http://${at(address, trust.port, 80)}`,
  };
}

/** "192.168.1.20:7518", as it stands in an address; without the port that goes without saying. */
function at(address: string, port: number, usual: number): string {
  return port === usual ? address : `${address}:${port}`;
}

function reasonOf(error: unknown): string {
  const where =
    error instanceof Error && 'address' in error && 'port' in error
      ? ` ${String(error.address)}:${String(error.port)}`
      : '';
  return `${codeOf(error) ?? ''}${where}`;
}
