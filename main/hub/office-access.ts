import { createHash, randomBytes } from 'node:crypto';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Session } from '#core/api/office-api.ts';
import type { PinStore } from '../store/documents/pin-store.ts';
import { problem } from './problem.ts';

const COOKIE = 'shoulderline';
const IDLE_MS = 12 * 3_600_000;
const MOST_SESSIONS = 100;

/** Who may do the office's work: with no PIN everybody at this machine, with one whoever gave it. */
export class OfficeAccess {
  readonly #pin: PinStore;
  readonly #now: () => number;
  /** Hashes of the tokens given out, and when each was last used. Kept in memory alone: a restart ends all sessions. */
  readonly #sessions = new Map<string, number>();

  constructor(pin: PinStore, now: () => number = Date.now) {
    this.#pin = pin;
    this.#now = now;
  }

  /** Refuses (401) who has not given the PIN, and everybody where it cannot be read. */
  need(request: FastifyRequest): void {
    if (this.#pin.unreadable !== null) throw problem(401, 'api.pin-unreadable');
    if (!this.isOpen(request)) throw problem(401, 'api.pin-needed');
  }

  isOpen(request: FastifyRequest): boolean {
    if (!this.#pin.set) return true;
    const key = keyOf(request);
    const used = key === null ? undefined : this.#sessions.get(key);
    if (key === null || used === undefined) return false;
    this.#sessions.delete(key);
    if (this.#now() - used > IDLE_MS) return false;
    this.#sessions.set(key, this.#now());
    return true;
  }

  state(request: FastifyRequest): Session {
    return { pin: this.#pin.set, open: this.isOpen(request) };
  }

  /** Begins a session for who asked: a token that no script can read and no other site can send. */
  begin(reply: FastifyReply): Session {
    if (!this.#pin.set) return { pin: false, open: true };
    const token = randomBytes(32).toString('base64url');
    for (const oldest of this.#sessions.keys())
      if (this.#sessions.size >= MOST_SESSIONS) this.#sessions.delete(oldest);
    this.#sessions.set(hashOf(token), this.#now());
    reply.header('set-cookie', `${COOKIE}=${token}; Path=/api; HttpOnly; SameSite=Strict`);
    return { pin: true, open: true };
  }

  end(request: FastifyRequest, reply: FastifyReply): Session {
    const key = keyOf(request);
    if (key !== null) this.#sessions.delete(key);
    reply.header('set-cookie', `${COOKIE}=; Path=/api; HttpOnly; SameSite=Strict; Max-Age=0`);
    return { pin: this.#pin.set, open: !this.#pin.set };
  }

  endAll(): void {
    this.#sessions.clear();
  }
}

function keyOf(request: FastifyRequest): string | null {
  const found = /(?:^|;\s*)shoulderline=([\w-]{43})(?:;|$)/.exec(request.headers.cookie ?? '')?.[1];
  return found === undefined ? null : hashOf(found);
}

function hashOf(token: string): string {
  return createHash('sha256').update(token).digest('base64');
}
