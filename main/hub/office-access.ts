import { createHash, randomBytes } from 'node:crypto';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Session } from '#core/api/office-api.ts';
import type { PinStore } from '../store/documents/pin-store.ts';
import type { KeptSessions } from './kept-sessions.ts';
import { problem } from './problem.ts';
import { deviceOf, isFromElsewhere, isOverNetwork } from './who-asks.ts';

const COOKIE = 'shoulderline';
/** What a browser is told by, session or not: only so that the wrong tries of others do not hold it up. */
const BROWSER = 'shoulderline-browser';
const YEAR_S = 365 * 86_400;
/** How often it is written down when sessions were last used. */
const KEEP_MS = 60_000;
const IDLE_MS = 12 * 3_600_000;
const MOST_SESSIONS = 100;

/** Who may do the office's work: with no PIN everybody at this machine and nobody else, with one whoever gave it. */
export class OfficeAccess {
  readonly #pin: PinStore;
  readonly #now: () => number;
  /** Hashes of the tokens given out, and when each was last used. */
  readonly #sessions: Map<string, number>;
  readonly #kept: KeptSessions;
  #written = 0;

  private constructor(
    pin: PinStore,
    kept: KeptSessions,
    sessions: ReadonlyMap<string, number>,
    now: () => number,
  ) {
    this.#pin = pin;
    this.#kept = kept;
    this.#sessions = new Map(sessions);
    this.#now = now;
  }

  /** With the sessions that outlived a restart: those of the PIN that is set. */
  static async open(pin: PinStore, kept: KeptSessions, now: () => number = Date.now): Promise<OfficeAccess> {
    return new OfficeAccess(pin, kept, await kept.read(pin.mark), now);
  }

  /** By what this browser is told, as a hash; '' where it shows nothing. A paired device is itself, whatever it shows. */
  browserOf(request: FastifyRequest): string {
    const device = deviceOf(request);
    if (device !== null) return hashOf(`device ${device.id}`);
    const found = /(?:^|;\s*)shoulderline-browser=([\w-]{43})(?:;|$)/.exec(request.headers.cookie ?? '')?.[1];
    return found === undefined ? '' : hashOf(found);
  }

  /** By what this browser is told from now on: one that showed nothing gets something, once `tell` is called. */
  apart(
    request: FastifyRequest,
    reply: FastifyReply,
  ): { readonly browser: string; readonly tell: () => void } {
    const known = this.browserOf(request);
    if (known !== '') return { browser: known, tell: () => undefined };
    const token = randomBytes(32).toString('base64url');
    const cookie = `${BROWSER}=${token}; Path=/api; HttpOnly; SameSite=Strict; Max-Age=${YEAR_S}${secure(request)}`;
    return { browser: hashOf(token), tell: () => void reply.header('set-cookie', cookie) };
  }

  /** Writes the sessions down; one that cannot be is over with the next restart, and no more. */
  async #keep(): Promise<void> {
    this.#written = this.#now();
    await this.#kept.write(this.#pin.mark, this.#sessions).catch(() => undefined);
  }

  /** Refuses (401) who has not given the PIN, and everybody where it cannot be read. */
  need(request: FastifyRequest): void {
    if (this.#pin.unreadable !== null) throw problem(401, 'api.pin-unreadable');
    if (!this.isOpen(request)) throw problem(401, 'api.pin-needed');
  }

  isOpen(request: FastifyRequest): boolean {
    if (!this.#pin.set) return !isOverNetwork(request);
    if (isFromElsewhere(request)) return false;
    const key = keyOf(request);
    const used = key === null ? undefined : this.#sessions.get(key);
    if (key === null || used === undefined) return false;
    this.#sessions.delete(key);
    if (this.#now() - used > IDLE_MS) return false;
    this.#sessions.set(key, this.#now());
    if (Math.abs(this.#now() - this.#written) > KEEP_MS) void this.#keep();
    return true;
  }

  state(request: FastifyRequest): Session {
    return { pin: this.#pin.set, open: this.isOpen(request) };
  }

  /** Begins a session for who asked: a token that no script can read and no other site can send. */
  async begin(request: FastifyRequest, reply: FastifyReply): Promise<Session> {
    if (!this.#pin.set) return this.state(request);
    const token = randomBytes(32).toString('base64url');
    for (const oldest of this.#sessions.keys())
      if (this.#sessions.size >= MOST_SESSIONS) this.#sessions.delete(oldest);
    this.#sessions.set(hashOf(token), this.#now());
    await this.#keep();
    reply.header('set-cookie', `${COOKIE}=${token}; Path=/api; HttpOnly; SameSite=Strict${secure(request)}`);
    return { pin: true, open: true };
  }

  async end(request: FastifyRequest, reply: FastifyReply): Promise<Session> {
    const key = keyOf(request);
    if (key !== null && this.#sessions.delete(key)) await this.#keep();
    reply.header(
      'set-cookie',
      `${COOKIE}=; Path=/api; HttpOnly; SameSite=Strict; Max-Age=0${secure(request)}`,
    );
    return { pin: this.#pin.set, open: !this.#pin.set && !isOverNetwork(request) };
  }

  async endAll(): Promise<void> {
    this.#sessions.clear();
    await this.#keep();
  }
}

/** What was given over an encrypted connection is sent over none that is not. */
function secure(request: FastifyRequest): string {
  return isOverNetwork(request) ? '; Secure' : '';
}

function keyOf(request: FastifyRequest): string | null {
  const found = /(?:^|;\s*)shoulderline=([\w-]{43})(?:;|$)/.exec(request.headers.cookie ?? '')?.[1];
  return found === undefined ? null : hashOf(found);
}

function hashOf(token: string): string {
  return createHash('sha256').update(token).digest('base64');
}
