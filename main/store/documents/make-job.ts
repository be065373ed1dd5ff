import type { RevisionNote } from '#core/api/revisions-api.ts';
import { builtInFields, completeDefaults } from '#core/job/complete-defaults.ts';
import { convertJob, convertLengths } from '#core/job/convert-units.ts';
import type { Job } from '#core/job/job.ts';
import { readJob } from '#core/job/read-job.ts';
import { whatChanged } from '#core/job/what-changed.ts';
import type { Result } from '#core/fields/fault.ts';
import { isTree, type Tree } from '#core/fields/read-shape.ts';
import { cutOtherWay } from '#core/marks/cut-other-way.ts';
import { livePlan } from '#core/marks/live-plan.ts';
import { lostMarks } from '#core/marks/lost-marks.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import { isFinished } from '#core/marks/stage-state.ts';
import { type AsMarked, keepAsMarked } from '#core/measured/as-marked.ts';
import { disagreements, without } from '#core/measured/disagreements.ts';
import { followJob } from '#core/measured/follow-job.ts';
import { type Measured, NOTHING_MEASURED } from '#core/measured/measured.ts';
import { readMeasured } from '#core/measured/read-measured.ts';
import type { Plan } from '#core/plan/plan.ts';
import { documentText } from '../files/document.ts';
import { DOCUMENT_FORMAT, type JobDocument, jobDocument, MOST_PAST } from './job-document.ts';
import type { Comes, JobMaker, MadeJob, Make, MakeKind, Makes } from './job-maker.ts';
import { unpackedPlan } from './kept-plan.ts';
import { hashOfText, planBytes } from './plan-bytes.ts';
import { planAnyway, planDocument } from './plan-document.ts';
import { progressOfDigest } from './progress-digest.ts';
import { reopen, type Opened } from './reopen.ts';

type Making = { readonly [K in MakeKind]: (asked: Makes[K]['asked']) => Makes[K]['gives'] };

const MAKING: Making = {
  plan({ document: text, last }) {
    const document = documentOf(text);
    return made(document, openedAnyway(document, last));
  },

  check: ({ id, lines }) => ({ whole: unpackedPlan(id, lines) !== null }),

  add({ file: text, id, added, at, profiles }) {
    const file: unknown = JSON.parse(text);
    const read = readJob(file);
    if (!read.ok) return read;
    if (!isTree(file)) return { ok: false, faults: [] };
    const document: JobDocument = {
      format: DOCUMENT_FORMAT,
      id: id ?? read.value.id,
      revision: 1,
      added,
      file: completeDefaults(file, builtInFields),
      profile: { ...profiles[read.value.units] },
      measured: {},
      asMarked: [],
      binned: null,
      history: [{ revision: 1, at, changes: [], more: 0 }],
    };
    const planned = planDocument(document);
    return planned.ok ? made(document, { plan: planned.value, faults: [], anyway: false }) : planned;
  },

  change({ before: text, last, change, at, by, profiles, progress: lines }) {
    const before = documentOf(text);
    const was = openedAnyway(before, last);
    const changes = changesOf(before, was, change, profiles);
    if (!changes.ok) return changes;
    const next = { ...before, ...changes.value };
    const revision = before.revision + 1;
    const note: RevisionNote = {
      revision,
      at,
      ...(by === undefined ? {} : { by }),
      ...(change.kind === 'back' ? { back: change.to } : {}),
      ...toldChanges(before, next),
    };
    const bare: JobDocument = { ...next, revision, history: noted(before, note) };
    const opened = reopen(was, bare, change.kind === 'measured');
    if (!opened.ok) return opened;
    const progress = progressOfDigest(before.id, lines);
    const live = [livePlan(was.plan, progress), livePlan(opened.value.plan, progress)] as const;
    const measured = change.kind === 'measured' ? sizesIn(bare) : null;
    const asMarked = keepAsMarked(before.asMarked, ...live, progress, measured);
    const document = { ...bare, asMarked };
    return { ...made(document, opened.value), comes: comesOf(before, document, live, progress) };
  },

  late({ before: text, last, whole, document: saved, measuring, progress: lines }) {
    const before = documentOf(text);
    const document = documentOf(saved);
    const progress = progressOfDigest(before.id, lines);
    const named = new Set(doorNames(lines));
    const of = (plan: Plan): Plan => ({ ...plan, doors: plan.doors.filter(({ door }) => named.has(door)) });
    // Of a job with faults it is not known which doors have them.
    const marks = whole ? null : [...new Set([...named].map((door) => door.replace(/-\d+$/, '')))];
    const was = of(openedAnyway(before, last, marks).plan);
    const codes = new Set(Object.keys(progress.parts));
    const isOf = ({ code, door }: AsMarked) => (code === undefined ? named.has(door ?? '') : codes.has(code));
    const fresh = keepAsMarked(
      before.asMarked.filter(isOf),
      livePlan(was, progress),
      livePlan(of(openedAnyway(document, last, marks).plan), progress),
      progress,
      measuring ? sizesIn(document) : null,
    );
    const after = { ...document, asMarked: [...document.asMarked.filter((row) => !isOf(row)), ...fresh] };
    return written(after);
  },
};

/** Makes what is asked for, here and now. */
export function makeJob<K extends MakeKind>(asked: Make<K>): Makes[K]['gives'] {
  // A kind and what is asked by it belong together, which its union does not say.
  const making = MAKING[asked.make] as (asked: Make<K>) => Makes[K]['gives'];
  return making(asked);
}

/** Makes jobs in this thread: for commands, and for a hub that runs from its sources. */
export const inThisThread: JobMaker = {
  makeJob: async (asked, { signal }) => {
    signal?.throwIfAborted();
    return makeJob(asked);
  },
};

function documentOf(text: string): JobDocument {
  return jobDocument.parse(JSON.parse(text));
}

function doorNames(lines: string): string[] {
  return lines.split('\n').map((line) => {
    const read: unknown = JSON.parse(line);
    return isTree(read) && typeof read.door === 'string' ? read.door : '';
  });
}

/** A document with its plan; where this version makes none of it, with the last one; without one, with what can be said of it. */
function openedAnyway(
  document: JobDocument,
  last: Uint8Array | null,
  marks: readonly string[] | null = null,
): Opened {
  const planned = planDocument(document, null, marks);
  if (planned.ok) return { plan: planned.value, faults: [], anyway: false };
  const kept = last === null ? null : unpackedPlan(document.id, last);
  return { plan: kept ?? planAnyway(document), faults: planned.faults, anyway: kept === null };
}

function made(document: JobDocument, { plan, faults, anyway }: Opened): MadeJob {
  const parts = plan.doors.flatMap(({ door, parts }) =>
    parts.map(({ code, part }) => ({ code, door, part })),
  );
  return {
    ok: true,
    ...written(document),
    plan: planBytes(plan, document.file.due),
    faults,
    anyway,
    parts: JSON.stringify(parts),
  };
}

/** A document as it will be read again, whose fields then stand in their order, and its sum. */
function written(document: JobDocument): { readonly document: string; readonly hash: string } {
  const read = documentOf(JSON.stringify(document));
  return { document: JSON.stringify(read), hash: hashOf(read) };
}

/** The sum of a document's text: in the bin or not, a job is the same. */
export function hashOf(document: JobDocument): string {
  return hashOfText(documentText({ ...document, binned: null }));
}

/** Everything of a job's document that a save may change. */
type Changes = Partial<Pick<JobDocument, 'file' | 'profile' | 'measured'>>;

function changesOf(
  before: JobDocument,
  was: Opened,
  change: Makes['change']['asked']['change'],
  profiles: Makes['change']['asked']['profiles'],
): Result<Changes> {
  if (change.kind === 'measured') return { ok: true, value: { measured: treeOf(change.measured) } };
  if (change.kind === 'back') {
    const { file, profile, measured } = documentOf(change.past);
    return { ok: true, value: { file, profile, measured } };
  }
  const file: unknown = JSON.parse(change.file);
  const read = readJob(file);
  if (!read.ok) return read;
  if (!isTree(file)) return { ok: false, faults: [] };
  const { units } = read.value;
  const from = was.plan.units;
  const changes = {
    file: completeDefaults(file, builtInFields),
    measured: measuredOf(before, from, read.value),
  };
  const own = { ...changes, profile: before.profile };
  const kept = units === from && (was.faults.length === 0 || planDocument({ ...before, ...own }).ok);
  // Tools of the day where they must be others; what is running goes on in its ways.
  const { ways } = before.profile;
  const profile = { ...profiles[units], ...(ways === undefined ? {} : { ways }) };
  return { ok: true, value: kept ? own : { ...changes, profile } };
}

function treeOf(text: string): Tree {
  const read: unknown = JSON.parse(text);
  return isTree(read) ? read : {};
}

/** What was measured of a job, in the units and of the sizes that it is changed to. */
function measuredOf(document: JobDocument, from: Plan['units'], now: Job): Tree {
  const before = readJob(convertJob(document.file, now.units));
  const measured = convertLengths(document.measured, from, now.units);
  return followJob(measured, before.ok ? before.value : null, now);
}

/** The measured sizes of a document that has been planned by them. */
function sizesIn({ measured, file }: JobDocument): Measured {
  const read = readMeasured(measured, file.units === 'mm' ? 'mm' : 'in');
  return read.ok ? read.value : NOTHING_MEASURED;
}

function toldChanges(before: JobDocument, after: JobDocument): Pick<RevisionNote, 'changes' | 'more'> {
  const { changes, more } = whatChanged(before, after);
  return { changes: [...changes], more };
}

/** The last saves with one more; the one before it stands there too, though nothing may be known of it. */
function noted({ revision, history }: JobDocument, note: RevisionNote): RevisionNote[] {
  const before =
    history.at(-1)?.revision === revision
      ? history
      : [...history, { revision, at: null, changes: [], more: 0 }];
  return [...before, note].slice(-MOST_PAST - 1);
}

/** So many settings are told one by one; of more only how many there are. */
export const MOST_TOLD = 2000;

/** What a change brings about, beyond what disagreed before it. */
function comesOf(
  before: JobDocument,
  after: JobDocument,
  [was, now]: readonly [Plan, Plan],
  progress: JobProgress,
): Comes {
  const all = without(
    disagreements(now.doors, progress, after.asMarked),
    disagreements(was.doors, progress, before.asMarked),
  );
  const disagree = all.filter(({ door }) => !isFinished(progress, door));
  const otherWay = cutOtherWay(was, now, progress);
  const finished = new Set(all.flatMap(({ door }) => (isFinished(progress, door) ? [door] : [])));
  return {
    finished: JSON.stringify([...finished]),
    disagreeing: disagree.length,
    disagree: JSON.stringify(disagree.slice(0, MOST_TOLD)),
    lost: JSON.stringify(lostMarks(was, now, progress)),
    cutOtherWay: otherWay.length,
    otherWay: JSON.stringify(otherWay.slice(0, MOST_TOLD)),
  };
}
