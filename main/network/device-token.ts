import { createHash, randomBytes } from 'node:crypto';

/** What a device shows to be let in: 32 random bytes. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

/** All that is kept of it: its SHA-256. */
export function hashOfToken(token: string): string {
  return createHash('sha256').update(token).digest('base64');
}
