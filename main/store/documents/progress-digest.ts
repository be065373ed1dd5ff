import { z } from 'zod';
import type { Done, JobProgress, PartProgress } from '#core/marks/mark.ts';

/** Of the marks of one door no more than what a change of its job is judged by: which are done, and by which entries. */
const done = z.record(z.string(), z.number());
const doorDigest = z.object({
  door: z.string(),
  done: done.optional(),
  parts: z.array(
    z.object({
      code: z.string(),
      part: z.string(),
      number: z.number(),
      done,
      proved: z.array(z.string()),
      spoiled: z.string().optional(),
      replacedBy: z.string().optional(),
    }),
  ),
});
type DoorDigest = z.infer<typeof doorDigest>;

/** One door's marks as a line of text for another thread: whole progress is several times as long. */
export function digestOf(door: string, { parts, doors }: JobProgress): string {
  const whole = doors[door];
  return JSON.stringify({
    door,
    ...(whole === undefined ? {} : { done: numbersOf(whole.done) }),
    parts: Object.values(parts).map(({ code, part, number, done, proved, spoiled, replacedBy }) => ({
      code,
      part,
      number,
      done: numbersOf(done),
      proved: Object.keys(proved),
      ...(spoiled === undefined ? {} : { spoiled: spoiled.stage }),
      ...(replacedBy === undefined ? {} : { replacedBy }),
    })),
  } satisfies DoorDigest);
}

function numbersOf(done: Readonly<Record<string, Done>>): Record<string, number> {
  return Object.fromEntries(Object.entries(done).map(([stage, { seq }]) => [stage, seq]));
}

/** The progress that such lines tell of: when, where and by whom is not in it. */
export function progressOfDigest(job: string, lines: string): JobProgress {
  const parts: Record<string, PartProgress> = {};
  const doors: Record<string, { done: Record<string, Done> }> = {};
  for (const line of lines === '' ? [] : lines.split('\n')) {
    const { door, done: whole, parts: own } = doorDigest.parse(JSON.parse(line));
    if (whole !== undefined) doors[door] = { done: marksOf(whole) };
    for (const { code, part, number, done: passed, proved, spoiled, replacedBy } of own)
      parts[code] = {
        code,
        door,
        part,
        number,
        done: marksOf(passed),
        proved: Object.fromEntries(proved.map((stage) => [stage, by(0)])),
        ...(spoiled === undefined ? {} : { spoiled: { ...by(0), stage: spoiled } }),
        ...(replacedBy === undefined ? {} : { replacedBy }),
      };
  }
  return { job, seq: 0, parts, doors };
}

function marksOf(numbers: Readonly<Record<string, number>>): Record<string, Done> {
  return Object.fromEntries(Object.entries(numbers).map(([stage, seq]) => [stage, by(seq)]));
}

/** A mark of which only its number is known. */
function by(seq: number): Done {
  return { seq, id: '', at: '', station: 'assembly' };
}
