import { ask } from '../hub/client.ts';
import type { Known } from './known.ts';

/**
 * What is found at an address: the hub, which knows this device; the hub, where it was revoked; something else; or nothing
 * that answers, or over no certificate that this browser trusts.
 */
export type Found = 'hub' | 'revoked' | 'stranger' | 'nothing';

/**
 * Looks what is there before the token is sent: only the hub can reckon from the token's hash, which it keeps, what this
 * page reckons from the token, for 32 bytes made here and for that very address (HMAC, RFC 2104).
 */
export async function whatIsAt(origin: string, { device, token }: Known): Promise<Found> {
  const nonce = base64url(crypto.getRandomValues(new Uint8Array(32)));
  try {
    const answer = await ask('POST /moved/proof', { body: { device, nonce }, to: { origin } });
    if (answer.kind === 'ok')
      return answer.value.proof === (await proofOf(token, `${nonce} ${origin}`)) ? 'hub' : 'stranger';
    if (answer.kind !== 'refused') return answer.kind === 'away' ? 'nothing' : 'stranger';
    return answer.refusal.code === 'device-unknown' ? 'revoked' : 'stranger';
  } catch {
    return 'stranger';
  }
}

async function proofOf(token: string, text: string): Promise<string> {
  const encoder = new TextEncoder();
  const hash = await crypto.subtle.digest('SHA-256', encoder.encode(token));
  const how = { name: 'HMAC', hash: 'SHA-256' };
  const key = await crypto.subtle.importKey('raw', hash, how, false, ['sign']);
  return base64url(new Uint8Array(await crypto.subtle.sign('HMAC', key, encoder.encode(text))));
}

/** Bytes as base64url without padding (RFC 4648 section 5). */
function base64url(bytes: Uint8Array): string {
  return btoa(String.fromCharCode(...bytes))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replaceAll('=', '');
}
