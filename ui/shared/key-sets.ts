/** Letters as they lie on a keyboard, a row each. */
const ROWS = ['QWERTYUIOP', 'ASDFGHJKL', 'ZXCVBNM'] as const;
const [first, second, third] = ROWS;

/** The keys that a pad on the screen has, by what is typed with it. The last sign of a code may be an I or an O. */
export const KEYS = {
  code: [...`1234567890${first}${second}${third}`],
  badge: [...`1234567890${first}${second}-${third}`],
  length: [...'1234567890', ' ', '/', '.', '-'],
  address: [...`1234567890:${first.toLowerCase()}.${second.toLowerCase()}-${third.toLowerCase()}`],
  count: [...'1234567890'],
  text: [...`1234567890-/${first.toLowerCase()},.${second.toLowerCase()}&`, ' ', ...third.toLowerCase()],
} as const;
export type KeySet = keyof typeof KEYS;

export function isKeySet(name: string | undefined): name is KeySet {
  return name !== undefined && Object.hasOwn(KEYS, name);
}
