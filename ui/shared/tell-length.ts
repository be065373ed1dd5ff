import { parseLength } from '#core/length/parse-length.ts';
import type { Units } from '#core/length/units.ts';
import { say } from '#core/words/say.ts';

/** What a length looks like in these units. */
export const EXAMPLES: Readonly<Record<Units, string>> = {
  in: '14 3/4, 14-3/4 or 14.75',
  mm: '375 or 375.5',
};

/** What a person is told of a typed length; null where it is one. Whether it may be 0 or below is for the field to say. */
export function tellLength(typed: string, units: Units): string | null {
  const text = typed.trim();
  if (text === '') return say('told.empty');
  const read = parseLength(text, units);
  if (read.ok) return null;
  if (text.includes(',') && parseLength(text.replace(',', '.'), units).ok)
    return say('told.comma', { example: text.replace(',', '.') });
  switch (read.fault.code) {
    case 'length-units':
      return say('told.marks');
    case 'length-digits':
      return say('told.digits');
    case 'length-denominator':
      return say('told.over-nothing');
    case 'length-size':
      return say('told.long', { most: units === 'in' ? '1,000\u00a0ft' : '300\u00a0m' });
    case 'length-form':
    case 'length-type':
      return say('told.length', { example: EXAMPLES[units] });
  }
}
