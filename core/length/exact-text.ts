import { unbroken } from './unbroken.ts';

/** A printed figure, or a count, as exact text for a person: decimals lose the zeros at their end, "3.000000" is "3"; a fraction stays as it is, never broken over two lines. */
export function exactText(value: string | number): string {
  const text = String(value);
  return /^-?\d+\.\d+$/.test(text) ? text.replace(/\.?0+$/, '') : unbroken(text);
}
