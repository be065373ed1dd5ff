import { z } from 'zod';
import { personName } from '#core/api/marks-api.ts';
import { station } from '#core/api/plan-api.ts';
import { partCode } from '#core/codes/part-code.ts';
import { readPartCode } from '#core/codes/read-code.ts';
import { isJobId, readDoorName } from '#core/job/read-job.ts';
import { LOG_FORMAT, readEntry } from './log-entry.ts';
import { NewerFormat } from '../files/migration.ts';

const instant = z.iso.datetime({ offset: true });
const job = z.string().refine(isJobId, 'expected the id of a job');
const code = z.string().refine((text) => {
  const read = readPartCode(text);
  return read.kind === 'part' && read.code === text;
}, 'expected the code of a part');
const text = (most: number) => z.string().max(most);

const mark = z.strictObject({
  received: instant,
  job,
  door: z.string().refine((name) => readDoorName(name) !== null, 'expected the name of a door, as MARK-1'),
  part: z.string().regex(/^[a-z]+(-[a-z]+)?(-[1-9]\d{0,4})?$/),
  mark: z.strictObject({
    id: z.string().regex(/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i, 'expected a uuid'),
    code,
    station,
    stage: z.string().regex(/^[a-z0-9-]{1,40}$/),
    mark: z.enum(['done', 'undo', 'spoiled', 'proved']),
    by: personName.optional(),
    reason: text(200).optional(),
    at: instant,
  }),
  replacement: z.strictObject({ code, number: z.int().min(1) }).optional(),
});

const entry = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('format'), format: z.int().min(1), version: text(100), at: instant }),
  z.strictObject({ kind: z.literal('mark'), mark: mark.superRefine(holdReplacement) }),
  z.strictObject({
    kind: z.literal('print'),
    print: z
      .strictObject({
        job,
        codes: z.array(code).min(1).max(100_000),
        at: instant,
        stock: text(60),
        printer: text(200).optional(),
        by: personName.optional(),
        reprint: z.boolean(),
        says: z.array(z.string().regex(/^[0-9]{1,4}:[0-9a-f]{1,20}$/)).optional(),
      })
      .refine(({ codes, says }) => says === undefined || says.length === codes.length, {
        path: ['says'],
        message: 'expected one for each of the codes',
      }),
  }),
  z.strictObject({ kind: z.literal('restored'), from: text(1000), at: instant }),
]);

/** A spoiled part, and no other, has the code of the one in its place, which follows from what and which it is. */
function holdReplacement(given: z.infer<typeof mark>, context: z.RefinementCtx): void {
  const { replacement, door, part } = given;
  const named = readDoorName(door);
  const right =
    (replacement !== undefined) === (given.mark.mark === 'spoiled') &&
    (replacement === undefined ||
      (named !== null &&
        replacement.code === partCode({ job: given.job, ...named, part, replacement: replacement.number })));
  if (!right)
    context.addIssue({ code: 'custom', path: ['replacement'], message: 'expected the code that follows' });
}

/** Holds the entries of a log that comes from outside to what this program writes, in their order. */
export class EntryRules {
  #format = 1;

  /** Throws a NewerFormat, or what is wrong with this entry. */
  hold(given: unknown): void {
    const known = readEntry(given, this.#format);
    if (known === null) throw new Error('an entry of the log is of an unknown kind');
    if (known.kind === 'format' && known.format > LOG_FORMAT)
      throw new NewerFormat('the log', known.format, LOG_FORMAT);
    const read = entry.parse(known);
    if (read.kind === 'format') this.#format = read.format;
  }
}
