const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** The keys that a pad on the screen has, by what is typed with it. The last sign of a code may be an I or an O. */
export const KEYS = {
  code: [...`1234567890${LETTERS}`],
  badge: [...`1234567890${LETTERS}-`],
  length: [...'1234567890', ' ', '/', '.', '-'],
  count: [...'1234567890'],
  text: [...`1234567890${LETTERS.toLowerCase()}`, ' ', '-', '.', ',', '/', '&'],
} as const;
export type KeySet = keyof typeof KEYS;

export function isKeySet(name: string | undefined): name is KeySet {
  return name !== undefined && Object.hasOwn(KEYS, name);
}
