import type { Socket } from 'node:net';
import type { StrangersLimits } from './limits.ts';
import { Pace } from './pace.ts';

const LOOK_MS = 50;
/** So long is left to what is being said to a device that is paired no more. */
const LAST_WORDS_MS = 1000;

/** A machine of the network, by its address, with its connections that have shown no device yet. */
interface Caller {
  readonly strangers: Map<Socket, { readonly since: number }>;
  /** Connections that came too quickly, and what hands each on. */
  readonly waiting: Map<Socket, () => void>;
  readonly made: Pace;
  readonly asked: Pace;
  shutOutUntil: number;
}

/** A connection, in whichever wrapping. */
export interface Connection {
  readonly remoteAddress?: string | undefined;
  readonly remotePort?: number | undefined;
  readonly localAddress?: string | undefined;
}

/**
 * Keeps whoever has shown no device from taking what those need who have: so few connections, requests and bytes are theirs,
 * for each machine and over all. A connection by which a device has shown itself is held to none of it.
 */
export class Strangers {
  readonly #limits: StrangersLimits;
  readonly #now: () => number;
  readonly #callers = new Map<string, Caller>();
  readonly #sockets = new Map<string, Socket>();
  /** Connections by which a device has shown itself, the oldest first, and which. */
  readonly #known = new Map<Socket, string>();
  readonly #made: Pace;
  readonly #asked: Pace;
  #looking: ReturnType<typeof setInterval> | null = null;

  constructor(limits: StrangersLimits, now: () => number = () => performance.now()) {
    this.#limits = limits;
    this.#now = now;
    this.#made = new Pace(limits.made.all, now);
    this.#asked = new Pace(limits.asked.all, now);
  }

  /** Takes a new connection that nothing is read of yet; hands it on at once, after a while, or ends it. */
  meet(socket: Socket, handOn: () => void): void {
    const address = socket.remoteAddress;
    if (address === undefined) return void socket.destroy();
    const caller = this.#caller(address);
    const many = caller.strangers.size >= this.#limits.connections.ofOne;
    if (many || this.#now() < caller.shutOutUntil) return void socket.destroy();
    const key = keyOf(socket);
    caller.strangers.set(socket, { since: this.#now() });
    this.#sockets.set(key, socket);
    socket.once('close', () => {
      this.#sockets.delete(key);
      this.#known.delete(socket);
      caller.strangers.delete(socket);
      caller.waiting.delete(socket);
    });
    this.#makeRoom();
    if (caller.waiting.size === 0 && this.#mayBeMade(caller)) handOn();
    else caller.waiting.set(socket, handOn);
    this.#looking ??= setInterval(() => this.#look(), LOOK_MS).unref();
  }

  /** Something is asked by a connection: may it be? If not, the connection is ended, and its machine shut out for a while. */
  mayAsk(connection: Connection | undefined): boolean {
    const socket = this.#sockets.get(keyOf(connection));
    if (socket === undefined) return false;
    if (this.#known.has(socket)) return true;
    return this.#asks(this.#caller(socket.remoteAddress ?? ''));
  }

  /** By this connection a device has shown itself; null: somebody has asked who is none. */
  shows(connection: Connection | undefined, device: string | null): void {
    const socket = this.#sockets.get(keyOf(connection));
    if (socket === undefined) return;
    const caller = this.#caller(socket.remoteAddress ?? '');
    // A browser sends its cookie with most of what it asks by a connection, not with all.
    if (device === null && this.#known.has(socket) && !this.#asks(caller)) this.#end(caller, socket);
    if (device === null || this.#known.get(socket) === device) return;
    caller.strangers.delete(socket);
    this.#known.set(socket, device);
    const its = [...this.#known].filter(([, each]) => each === device);
    if (its.length > this.#limits.connections.ofDevice && its[0] !== undefined) this.#end(caller, its[0][0]);
  }

  /** A device is paired no more: its connections are ended, once what is being said has been said. */
  endOf(device: string): void {
    const its = [...this.#known].flatMap(([socket, each]) => (each === device ? [socket] : []));
    setTimeout(() => its.forEach((socket) => socket.destroy()), LAST_WORDS_MS).unref();
  }

  close(): void {
    if (this.#looking !== null) clearInterval(this.#looking);
    this.#looking = null;
  }

  #caller(address: string): Caller {
    const known = this.#callers.get(address);
    if (known !== undefined) return known;
    const fresh: Caller = {
      strangers: new Map(),
      waiting: new Map(),
      made: new Pace(this.#limits.made.ofOne, this.#now),
      asked: new Pace(this.#limits.asked.ofOne, this.#now),
      shutOutUntil: 0,
    };
    this.#callers.set(address, fresh);
    return fresh;
  }

  #asks(caller: Caller): boolean {
    const { ofOne, little } = this.#limits.asked;
    if (caller.asked.take()) return caller.asked.left >= ofOne.most - little || this.#asked.take();
    this.#shutOut(caller);
    return false;
  }

  #mayBeMade({ made }: Caller): boolean {
    return made.left >= 1 && this.#made.take() && made.take();
  }

  /** Where there are too many over all, the oldest of the machine that has the most has to go. */
  #makeRoom(): void {
    const all = [...this.#callers.values()];
    if (all.reduce((sum, { strangers }) => sum + strangers.size, 0) <= this.#limits.connections.most) return;
    const most = all.reduce((a, b) => (b.strangers.size > a.strangers.size ? b : a));
    const [oldest] = most.strangers.keys();
    if (oldest !== undefined) this.#end(most, oldest);
  }

  #shutOut(caller: Caller): void {
    caller.shutOutUntil = this.#now() + this.#limits.shutOutMs;
    for (const socket of caller.strangers.keys()) this.#end(caller, socket);
  }

  #look(): void {
    const now = this.#now();
    for (const [address, caller] of this.#callers) {
      for (const [socket, { since }] of caller.strangers) {
        if (now - since > this.#limits.lastMs) this.#end(caller, socket);
        else if (socket.bytesRead > this.#limits.bytes) {
          this.#shutOut(caller);
          break;
        }
      }
      const [first] = caller.waiting;
      if (first !== undefined && this.#mayBeMade(caller)) {
        caller.waiting.delete(first[0]);
        first[1]();
        // Whoever else waits comes before it gets its next.
        this.#callers.delete(address);
        this.#callers.set(address, caller);
      }
      const quiet = caller.made.isFull && caller.asked.isFull && now >= caller.shutOutUntil;
      if (caller.strangers.size === 0 && quiet) this.#callers.delete(address);
    }
    if (this.#callers.size === 0) this.close();
  }

  #end({ strangers, waiting }: Caller, socket: Socket): void {
    strangers.delete(socket);
    waiting.delete(socket);
    // Nothing is asked by it any more, though more may have come in already.
    this.#sockets.delete(keyOf(socket));
    setImmediate(() => socket.destroy());
  }
}

function keyOf({ remoteAddress = '', remotePort = 0, localAddress = '' }: Connection = {}): string {
  return `${remoteAddress} ${remotePort} ${localAddress}`;
}
