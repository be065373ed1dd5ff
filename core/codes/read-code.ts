import { Mod37_36 } from '@konfirm/iso7064';

/** What a scanned text is: a part, a person's badge, a door's line on the office sheet, or no code of ours. */
export type Scanned =
  | { readonly kind: 'part'; readonly code: string }
  | { readonly kind: 'badge'; readonly badge: string }
  | { readonly kind: 'door'; readonly door: string }
  | { readonly kind: 'bad-check' }
  | { readonly kind: 'malformed' };

/** Reads a scanned or typed text. Lower case, spaces and hyphens make no difference in a part's code, nor O for 0 and I for 1. */
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

/** Letters that look like a digit, and the digit. */
const LIKE: Readonly<Record<string, string>> = { O: '0', I: '1' };
/** What may be meant by a check character that is typed like another. */
const MEANT: Readonly<Record<string, string>> = { O: 'O0', '0': '0O', I: 'I1', '1': '1I' };

/**
 * A part's code as it stands in the store, or why the text is none. In the first nine characters neither O nor I
 * stands, so there they are the digits that they look like. The check character may be any of the four: the reading
 * that checks is taken, and since the nine before it ask for one character, no two readings can. Y and Z, which look
 * like no digit, stay refused among the nine.
 */
export function readPartCode(
  text: string,
): { kind: 'part'; code: string } | { kind: 'bad-check' } | { kind: 'malformed' } {
  if (text.length > 40) return { kind: 'malformed' };
  const typed = text.toUpperCase().replace(/[\s-]/g, '');
  const body = typed.slice(0, -1).replace(/[OI]/g, (letter) => LIKE[letter] ?? letter);
  const check = typed.slice(-1);
  if (!/^[0-9A-HJ-NP-X]{9}[0-9A-Z]$/.test(body + check)) return { kind: 'malformed' };
  const code = [...(MEANT[check] ?? check)]
    .map((meant) => body + meant)
    .find((each) => Mod37_36.validate(each));
  return code === undefined ? { kind: 'bad-check' } : { kind: 'part', code };
}
