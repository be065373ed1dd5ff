import type { NamedPart } from '../plan/figure.ts';
import type { Joint } from './derive.ts';

/** The part of the frame, for a sentence, by the field of the job file that makes its width: "stile" for either of them. */
export function memberNamed(field: string, { midRails }: Joint): { readonly part: NamedPart } {
  const index = /^midRails\[(\d+)\]/.exec(field)?.[1];
  if (index !== undefined) {
    const k = midRails.findIndex((rail) => rail.index === Number(index));
    return { part: `rail-mid-${k + 1}` };
  }
  if (field.startsWith('topRail')) return { part: 'rail-top' };
  return { part: field.startsWith('bottomRail') ? 'rail-bottom' : 'stile' };
}
