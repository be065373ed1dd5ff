import { Mod37_36 } from '@konfirm/iso7064';

/** What a scanned text is: a part, a person's badge, a door's line on the office sheet, or no code of ours. */
export type Scanned =
  | { readonly kind: 'part'; readonly code: string }
  | { readonly kind: 'badge'; readonly badge: string }
  | { readonly kind: 'door'; readonly door: string }
  | { readonly kind: 'bad-check' }
  | { readonly kind: 'malformed' };

/** Reads a scanned or typed text. Lower case, spaces and hyphens make no difference in a part's code. */
export function readCode(text: string): Scanned {
  const trimmed = text.trim();
  if (/^P-/i.test(trimmed)) {
    const badge = trimmed.slice(2).toUpperCase();
    return /^[A-Z0-9]{1,20}$/.test(badge) ? { kind: 'badge', badge: `P-${badge}` } : { kind: 'malformed' };
  }
  if (/^D-/i.test(trimmed)) {
    const door = readPartCode(trimmed.slice(2));
    return door.kind === 'part' ? { kind: 'door', door: `D-${door.code}` } : door;
  }
  return readPartCode(trimmed);
}

/** A part's code as it stands in the store, or why the text is none. */
export function readPartCode(
  text: string,
): { kind: 'part'; code: string } | { kind: 'bad-check' } | { kind: 'malformed' } {
  if (text.length > 40) return { kind: 'malformed' };
  const code = text.toUpperCase().replace(/[\s-]/g, '');
  if (!/^[0-9A-HJ-NP-X]{9}[0-9A-Z]$/.test(code)) return { kind: 'malformed' };
  return Mod37_36.validate(code) ? { kind: 'part', code } : { kind: 'bad-check' };
}
