import { partName } from '../telling/names.ts';
import type { Joint } from './derive.ts';

/** What a member of the frame is called in a sentence, by the field of the job file that makes its width. */
export function memberNamed(field: string, { midRails }: Joint): string {
  const index = /^midRails\[(\d+)\]/.exec(field)?.[1];
  if (index !== undefined) {
    const k = midRails.findIndex((rail) => rail.index === Number(index));
    return inSentence(`rail-mid-${k + 1}`);
  }
  if (field.startsWith('topRail')) return inSentence('rail-top');
  return field.startsWith('bottomRail') ? inSentence('rail-bottom') : 'stile';
}

/** A part's name as it stands inside a sentence. */
export function inSentence(part: string): string {
  return partName(part).toLowerCase();
}
