import type { JobLine } from '#core/api/jobs-api.ts';
import { speakFaults } from '#core/telling/speak-faults.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';
import type { Language } from '#core/words/languages.ts';
import type { Changed, NotSaved } from '../store/documents/job-change.ts';
import { StoreBusy } from '../store/files/file-port.ts';
import { Stretch } from '../store/files/stretch.ts';
import type { Store } from '../store/store.ts';
import type { StoredJob } from '../store/documents/stored-job.ts';
import type { Announcer } from './events.ts';
import { faulty, problem, type Problem } from './problem.ts';
import type { FastifyReply } from 'fastify';
import { jobsTag } from './kept-tags.ts';
import { isKnown, planTag } from './plan-tag.ts';
import { RecentAnswers } from './recent-answers.ts';
import type { Asked, Serve } from './serve.ts';
import { bytesInPieces, jsonInPieces, JSON_TYPE } from './json-pieces.ts';
import { newlyOutdated } from './stickers-due.ts';
import { MOST_TOLD } from '../store/documents/make-job.ts';
import { whenGone } from './gone.ts';
import { planSource } from './plan-source.ts';
import { planFrom, type PlanSource } from '../work/plan-source.ts';
import { isSmall, type WorkDesk } from '../work/work-desk.ts';

/** The reasons of so many doors are told at once; of more, door by door. */
const MOST_EXPLAINED = 50;

/** What is asked of a plan, but for what the plan is made from. */
type PlanTask =
  | { readonly kind: 'plan'; readonly why: boolean }
  | { readonly kind: 'doors' }
  | { readonly kind: 'door'; readonly door: string; readonly mark: string; readonly why: boolean };

/** Everything under /jobs but its papers. */
export function jobRoutes(
  serve: Serve,
  store: Store,
  announcer: Announcer,
  work: WorkDesk,
  version: string,
): void {
  const tell = (id: string, change: 'added' | 'changed' | 'removed') =>
    announcer.tell({ event: 'job', data: { id, change } });

  store.onReady((id) => tell(id, 'added'));

  serve('GET /jobs', async ({ language }) => {
    // A job that is left out would be taken for removed.
    await store.jobs.ready();
    // What changes while the list is made is told by another tag: the list is asked for once more then.
    const tag = jobsTag(store);
    const jobs: JobLine[] = [];
    for (const stored of store.jobs.all()) jobs.push(lineOf(stored, await store.left(stored), language));
    return { jobs, tag };
  });

  serve('POST /jobs', async ({ body, reply }) => {
    const saved = await store.change(() => store.jobs.add(body, (id) => store.seen(id)));
    if (saved.kind !== 'saved') throw unsaved(saved, 'new');
    tell(saved.stored.document.id, 'added');
    return jsonInPieces(reply.code(201), [...savedText(saved.stored, saved), '}']);
  });

  /** An answer out of a plan: that it is known already, or as it is made, `here` or by another thread. */
  const recent = new RecentAnswers();
  const answer = (
    { language, request, reply }: Pick<Asked<'GET /jobs'>, 'language' | 'request' | 'reply'>,
    stored: StoredJob,
    task: PlanTask,
    here?: (source: PlanSource) => unknown,
  ): FastifyReply => {
    const source = planSource(store, stored);
    const of = JSON.stringify(task);
    const tag = planTag({ stored, replaced: source.replaced, version, language, of });
    if (isKnown(request, reply, tag)) return reply.code(304).send();
    if (here !== undefined)
      return bytesInPieces(
        reply,
        recent.of(`${stored.document.id} ${tag}`, () => Buffer.from(JSON.stringify(here(source)))),
      );
    const how = { doors: stored.summary.doors, signal: whenGone(reply) };
    return reply.type(JSON_TYPE).send(work.stream({ ...task, source, language }, how));
  };

  serve('GET /jobs/:id', async (asked) => {
    const stored = jobOf(store, asked.params.id);
    const { doors } = stored.summary;
    const why = asked.query.why === '1';
    if (why && doors > MOST_EXPLAINED)
      throw problem(400, 'api.why-too-many', {
        most: MOST_EXPLAINED,
        doors,
        address: `/api/jobs/${encodeURIComponent(stored.document.id)}/doors/DOOR?why=1`,
      });
    const { doors: count, marks } = stored.index.head;
    return !why && isSmall({ doors: count, marks: marks.length })
      ? answer(asked, stored, { kind: 'plan', why }, (source) => speakPlan(planFrom(source), asked.language))
      : answer(asked, stored, { kind: 'plan', why });
  });

  serve('GET /jobs/:id/doors', async (asked) =>
    answer(asked, jobOf(store, asked.params.id), { kind: 'doors' }),
  );

  serve('GET /jobs/:id/doors/:door', async (asked) => {
    const stored = jobOf(store, asked.params.id);
    const { door } = asked.params;
    if (stored.index.doorNamed(door) === undefined)
      throw problem(404, 'api.door-unknown', { door: door.slice(0, 20) });
    const mark = door.replace(/-\d+$/, '');
    return answer(asked, stored, { kind: 'door', door, mark, why: asked.query.why === '1' });
  });

  serve('GET /jobs/:id/file', async ({ params }) => {
    const { id, revision, file, measured, asMarked } = jobOf(store, params.id).document;
    return { id, revision, file, measured, asMarked };
  });

  serve('GET /jobs/:id/progress', async ({ params, reply }) =>
    jsonInPieces(reply, await progressText(store, jobOf(store, params.id).document.id)),
  );

  serve('PUT /jobs/:id', async ({ params, query, body, reply }) => {
    const { id } = jobOf(store, params.id).document;
    const dry = query.dry === '1';
    const { revision, file, by } = body;
    const changed = await store.change(() =>
      store.jobs.update(id, revision, file, { dry, by, ...onlyAsked(dry, reply) }),
    );
    if (changed.kind !== 'changed') throw unsaved(changed, id);
    if (!dry) tell(id, 'changed');
    return changedAnswer(changed, store, dry, reply);
  });

  serve('GET /jobs/:id/revisions', async ({ params }) => {
    const { id, revision: current, history } = jobOf(store, params.id).document;
    const kept = await store.jobs.past(id);
    const revisions = history.map((note) => ({
      ...note,
      kept: note.revision < current && kept.includes(note.revision),
    }));
    return { current, revisions: revisions.reverse() };
  });

  serve('POST /jobs/:id/revisions/:revision/restore', async ({ params, query, body, reply }) => {
    const { id } = jobOf(store, params.id).document;
    const dry = query.dry === '1';
    const to = /^\d{1,10}$/.test(params.revision) ? Number(params.revision) : 0;
    const { revision, by } = body;
    const changed = await store.change(() =>
      store.jobs.goBack(id, revision, to, { dry, by, ...onlyAsked(dry, reply) }),
    );
    if (changed.kind === 'no-revision')
      throw problem(404, 'api.revision-unknown', { revision: params.revision.slice(0, 20) });
    if (changed.kind !== 'changed') throw unsaved(changed, id);
    if (!dry) tell(id, 'changed');
    return changedAnswer(changed, store, dry, reply);
  });

  serve('PUT /jobs/:id/measured', async ({ params, query, body, reply }) => {
    const { id } = jobOf(store, params.id).document;
    const dry = query.dry === '1';
    const { revision, measured, by } = body;
    const changed = await store.change(() =>
      store.jobs.measure(id, revision, measured, { dry, by, ...onlyAsked(dry, reply) }),
    );
    if (changed.kind !== 'changed') throw unsaved(changed, id);
    if (!dry) tell(id, 'changed');
    const { document } = dry ? changed.before : changed.stored;
    const comes = await comesText(changed, store);
    return jsonInPieces(reply, [`{"revision":${document.revision}`, ...comes, '}']);
  });

  serve('DELETE /jobs/:id', async ({ params }) => {
    const { id } = jobOf(store, params.id).document;
    if (!(await store.binJob(id))) throw unknownJob(id);
    tell(id, 'removed');
    return null;
  });
}

/** The job of this id, or 404; of one in the bin that is said. */
export function jobOf(store: Store, id: string): StoredJob {
  const stored = store.jobs.get(id);
  if (stored !== undefined) return stored;
  if (store.jobs.getBinned(id) !== undefined) throw problem(404, 'api.job-binned', { id: id.slice(0, 70) });
  if (store.jobs.notReady.includes(id)) throw new StoreBusy('this job is being made ready');
  throw unknownJob(id);
}

function unknownJob(id: string): Problem {
  return problem(404, 'api.job-unknown', { id: id.slice(0, 70) });
}

/** What a change brings about, beyond what disagreed before it, as it stands in an answer. */
async function comesText(
  { before, stored, comes }: Extract<Changed, { kind: 'changed' }>,
  store: Store,
): Promise<string[]> {
  const { finished, disagreeing, disagree } = comes;
  const outdated = await newlyOutdated(store, before.index, stored);
  return [
    `,"finished":${finished},"disagreeing":${disagreeing},"disagree":${disagree}`,
    `,"outdated":${outdated.length},"stickers":${JSON.stringify(outdated.slice(0, MOST_TOLD))}`,
  ];
}

function unsaved(saved: NotSaved, id: string): Problem {
  switch (saved.kind) {
    case 'faults':
      return faulty(saved.faults);
    case 'stale':
      return problem(409, 'api.stale', { revision: saved.revision }, { revision: saved.revision });
    case 'unknown':
    case 'no-revision':
      return unknownJob(id);
  }
}

/** Of a dry run the revision is the one that still stands. */
async function changedAnswer(
  changed: Extract<Changed, { kind: 'changed' }>,
  store: Store,
  dry: boolean,
  reply: FastifyReply,
): Promise<FastifyReply> {
  const { before, stored, parts, comes } = changed;
  const { lost, cutOtherWay, otherWay } = comes;
  const { revision } = (dry ? before : stored).document;
  return jsonInPieces(reply, [
    ...savedText(stored, { parts, codesChanged: false }, revision),
    ...(await comesText(changed, store)),
    `,"lost":${lost},"cutOtherWay":${cutOtherWay},"otherWay":${otherWay}}`,
  ]);
}

/** A saved job as it stands in an answer, but for its end. */
function savedText(
  { document, summary }: StoredJob,
  { parts, codesChanged }: { readonly parts: string; readonly codesChanged: boolean },
  revision = document.revision,
): string[] {
  const about = { id: document.id, job: summary.job, revision, codesChanged };
  return [`${JSON.stringify(about).slice(0, -1)},"parts":`, parts];
}

/** A job's progress as it stands in an answer. */
async function progressText(store: Store, job: string): Promise<string[]> {
  const parts: string[] = [];
  const doors: string[] = [];
  const stretch = new Stretch();
  // Marks that come while others get their turn are in some doors' progress and not in all: whoever reads it takes them again.
  const begun = store.lastSeq;
  let last = 0;
  for (const [, progress] of store.marked(job)) {
    last = Math.max(last, progress.seq);
    for (const [code, part] of Object.entries(progress.parts)) parts.push(member(code, part, parts));
    for (const [door, done] of Object.entries(progress.doors)) doors.push(member(door, done, doors));
    await stretch.giveWay();
  }
  return [
    `${JSON.stringify({ job, seq: Math.min(last, begun) }).slice(0, -1)},"parts":{`,
    ...parts,
    '},"doors":{',
    ...doors,
    '}}',
  ];
}

function member(key: string, value: unknown, before: readonly string[]): string {
  return `${before.length === 0 ? '' : ','}${JSON.stringify(key)}:${JSON.stringify(value)}`;
}

/** A look at what a save would do ends when who asked is gone; a save itself is carried out. */
function onlyAsked(dry: boolean, reply: FastifyReply): { readonly signal?: AbortSignal } {
  return dry ? { signal: whenGone(reply) } : {};
}

/** So many faults are told of a job in the list; the form finds all of them. */
const MOST_FAULTS = 20;

function lineOf({ document, summary, faults }: StoredJob, left: number, language: Language): JobLine {
  const { id, job, due, units, doors, parts } = summary;
  return {
    id,
    job,
    ...(due === undefined ? {} : { due }),
    units,
    doors,
    parts,
    left,
    revision: document.revision,
    hash: summary.hash,
    ...(faults.length === 0 ? {} : { faults: speakFaults(faults.slice(0, MOST_FAULTS), language) }),
  };
}
