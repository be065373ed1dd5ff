import type { JobLine } from '#core/api/jobs-api.ts';
import { livePlan } from '#core/marks/live-plan.ts';
import { cutOtherWay } from '#core/marks/cut-other-way.ts';
import { lostMarks } from '#core/marks/lost-marks.ts';
import { isFinished } from '#core/marks/stage-state.ts';
import { disagreements, without } from '#core/measured/disagreements.ts';
import { newlyOutdated } from '#core/stickers/to-print.ts';
import { speakFaults } from '#core/telling/speak-faults.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';
import type { Language } from '#core/words/languages.ts';
import type { Changed, NotSaved, Saved } from '../store/documents/job-store.ts';
import type { Store } from '../store/store.ts';
import type { StoredJob } from '../store/documents/stored-job.ts';
import type { Announcer } from './events.ts';
import { faulty, problem, type Problem } from './problem.ts';
import type { FastifyReply } from 'fastify';
import { isKnown, planTag } from './plan-tag.ts';
import type { Asked, GivenBy, Serve } from './serve.ts';
import { whenGone } from './gone.ts';
import { planSource } from './plan-source.ts';
import { MANY_DOORS, type WorkDesk } from '../work/work-desk.ts';

/** The reasons of so many doors are told at once; of more, door by door. */
const MOST_EXPLAINED = 50;

const JSON_TYPE = 'application/json; charset=utf-8';

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

  serve('GET /jobs', async ({ language }) => ({
    jobs: store.jobs.all().map((stored) => lineOf(stored, store.left(stored), language)),
  }));

  serve('POST /jobs', async ({ body }) => {
    const saved = await store.change(() => store.jobs.add(body, (id) => store.seen(id)));
    if (saved.kind === 'saved') tell(saved.stored.document.id, 'added');
    return savedAnswer(saved, 'new');
  });

  /** An answer out of a plan: that it is known already, or as it is made, `here` or by another thread. */
  const answer = <T>(
    { language, request, reply }: Pick<Asked<'GET /jobs'>, 'language' | 'request' | 'reply'>,
    stored: StoredJob,
    task: PlanTask,
    here?: () => T,
  ): T | FastifyReply => {
    const source = planSource(store, stored);
    const of = JSON.stringify(task);
    const tag = planTag({ stored, replaced: source.replaced, version, language, of });
    if (isKnown(request, reply, tag)) return reply.code(304).send();
    if (here !== undefined) return here();
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
    if (why || doors > MANY_DOORS) return answer<never>(asked, stored, { kind: 'plan', why });
    return answer(asked, stored, { kind: 'plan', why }, () =>
      speakPlan(livePlan(stored.plan, store.progress(stored.document.id)), asked.language),
    );
  });

  serve('GET /jobs/:id/doors', async (asked) =>
    answer<never>(asked, jobOf(store, asked.params.id), { kind: 'doors' }),
  );

  serve('GET /jobs/:id/doors/:door', async (asked) => {
    const stored = jobOf(store, asked.params.id);
    const { door } = asked.params;
    if (!stored.summary.doorNames.includes(door))
      throw problem(404, 'api.door-unknown', { door: door.slice(0, 20) });
    const mark = door.replace(/-\d+$/, '');
    return answer<never>(asked, stored, { kind: 'door', door, mark, why: asked.query.why === '1' });
  });

  serve('GET /jobs/:id/file', async ({ params }) => {
    const { id, revision, file, measured, asMarked } = jobOf(store, params.id).document;
    return { id, revision, file, measured, asMarked };
  });

  serve('GET /jobs/:id/progress', async ({ params }) => store.progress(jobOf(store, params.id).document.id));

  serve('PUT /jobs/:id', async ({ params, query, body }) => {
    const { id } = jobOf(store, params.id).document;
    const dry = query.dry === '1';
    const { revision, file, by } = body;
    const changed = await store.change(() => store.jobs.update(id, revision, file, { dry, by }));
    if (changed.kind !== 'changed') throw unsaved(changed, id);
    if (!dry) tell(id, 'changed');
    return changedAnswer(changed, store, dry);
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

  serve('POST /jobs/:id/revisions/:revision/restore', async ({ params, query, body }) => {
    const { id } = jobOf(store, params.id).document;
    const dry = query.dry === '1';
    const to = /^\d{1,10}$/.test(params.revision) ? Number(params.revision) : 0;
    const { revision, by } = body;
    const changed = await store.change(() => store.jobs.goBack(id, revision, to, { dry, by }));
    if (changed.kind === 'no-revision')
      throw problem(404, 'api.revision-unknown', { revision: params.revision.slice(0, 20) });
    if (changed.kind !== 'changed') throw unsaved(changed, id);
    if (!dry) tell(id, 'changed');
    return changedAnswer(changed, store, dry);
  });

  serve('PUT /jobs/:id/measured', async ({ params, query, body }) => {
    const { id } = jobOf(store, params.id).document;
    const dry = query.dry === '1';
    const { revision, measured, by } = body;
    const changed = await store.change(() => store.jobs.measure(id, revision, measured, { dry, by }));
    if (changed.kind !== 'changed') throw unsaved(changed, id);
    if (!dry) tell(id, 'changed');
    const { lost: _lost, cutOtherWay: _cut, otherWay: _way, ...comes } = comesOf(changed, store, dry);
    return comes;
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
  throw unknownJob(id);
}

function unknownJob(id: string): Problem {
  return problem(404, 'api.job-unknown', { id: id.slice(0, 70) });
}

/** So many settings are told one by one; of more only how many there are. */
const MOST_TOLD = 2000;

/** What a change brings about, beyond what disagreed before it; of a dry run the revision is the one that still stands. */
function comesOf(
  { before, stored }: Extract<Changed, { kind: 'changed' }>,
  store: Store,
  dry: boolean,
): GivenBy<'PUT /jobs/:id/measured'> & Pick<GivenBy<'PUT /jobs/:id'>, 'lost' | 'cutOtherWay' | 'otherWay'> {
  const { id } = stored.document;
  const progress = store.progress(id);
  const [was, now] = [livePlan(before.plan, progress), livePlan(stored.plan, progress)];
  const all = without(
    disagreements(now.doors, progress, stored.document.asMarked),
    disagreements(was.doors, progress, before.document.asMarked),
  );
  const disagree = all.filter(({ door }) => !isFinished(progress, door));
  const otherWay = cutOtherWay(was, now, progress);
  const outdated = newlyOutdated(was, now, progress, store.printed(id));
  return {
    revision: (dry ? before : stored).document.revision,
    finished: [...new Set(all.flatMap(({ door }) => (isFinished(progress, door) ? [door] : [])))],
    disagreeing: disagree.length,
    disagree: disagree.slice(0, MOST_TOLD),
    outdated: outdated.length,
    stickers: outdated.slice(0, MOST_TOLD).map(({ code, door, part }) => ({ code, door, part })),
    lost: lostMarks(was, now, progress),
    cutOtherWay: otherWay.length,
    otherWay: otherWay.slice(0, MOST_TOLD),
  };
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

function changedAnswer(
  changed: Extract<Changed, { kind: 'changed' }>,
  store: Store,
  dry: boolean,
): GivenBy<'PUT /jobs/:id'> {
  const { document } = changed.stored;
  const answer = savedAnswer({ kind: 'saved', stored: changed.stored, codesChanged: false }, document.id);
  return { ...answer, ...comesOf(changed, store, dry) };
}

function savedAnswer(saved: Saved, id: string): GivenBy<'POST /jobs'> {
  if (saved.kind !== 'saved') throw unsaved(saved, id);
  const { document, plan } = saved.stored;
  return {
    id: document.id,
    job: plan.job,
    revision: document.revision,
    codesChanged: saved.codesChanged,
    parts: plan.doors.flatMap(({ door, parts }) => parts.map(({ code, part }) => ({ code, door, part }))),
  };
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
