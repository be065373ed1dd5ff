import { say } from '#core/words/say.ts';

/** Which doors a full-size drawing is for, on its first sheet. */
export function forDoors(doors: readonly string[]): string {
  return say('paper.for-doors', { doors: someDoors(doors, 40) });
}

/** A list of doors as one text; where there are more than so many, the first and how many more. */
export function someDoors(doors: readonly string[], most: number): string {
  if (doors.length <= most) return doors.join(', ');
  const more = say('paper.and-more', { count: doors.length - most + 1 });
  return `${doors.slice(0, most - 1).join(', ')} ${more}`;
}
