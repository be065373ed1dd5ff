import type { FastifyInstance, FastifyReply } from 'fastify';
import { markRequest, type PartAnswer, type RefusalBody } from '#core/api/marks-api.ts';
import { readPartCode } from '#core/codes/read-code.ts';
import { isStation } from '#core/joint/names.ts';
import { boardDoors } from '#core/marks/board.ts';
import { type Located, livePlan } from '#core/marks/live-plan.ts';
import type { JobProgress, Mark, Refusal } from '#core/marks/mark.ts';
import { own } from '#core/marks/progress.ts';
import { nextStage, stageStates } from '#core/marks/stage-state.ts';
import { say } from '#core/words/say.ts';
import type { Store } from '../store/store.ts';
import { checked } from './checked.ts';

const STATUS: Readonly<Partial<Record<Refusal, number>>> = {
  malformed: 400,
  'bad-check': 400,
  'unknown-code': 404,
};

/** GET /parts/:code, POST /marks, GET /board. */
export function markRoutes(app: FastifyInstance, store: Store): void {
  app.get<{ Params: { code: string }; Querystring: { station?: string } }>(
    '/parts/:code',
    async (request, reply) => {
      const code = readPartCode(request.params.code);
      if (code.kind !== 'part') return refuse(reply, code.kind);
      const known = store.find(code.code);
      if (known === null) return refuse(reply, 'unknown-code', { code: code.code });
      const { station } = request.query;
      return partAnswer(
        code.code,
        known.stored.plan.job,
        known.found,
        store.progress(known.stored.document.id),
        station ?? '',
      );
    },
  );

  app.post('/marks', { bodyLimit: 16 * 1024 }, async (request, reply) => {
    const sent = checked(markRequest, request.body);
    const code = readPartCode(sent.code);
    if (code.kind !== 'part') return refuse(reply, code.kind);
    const marked = await store.mark({ ...sent, code: code.code } as Mark);
    if (!marked.ok)
      return refuse(
        reply,
        marked.code,
        { ...marked.figures, code: code.code, stage: sent.stage },
        marked.missing,
      );
    const { accepted, stored, progress } = marked;
    const found = liveAfter(store, accepted.replacement?.code ?? accepted.mark.code);
    if (found === null) return refuse(reply, 'unknown-code', { code: stored.document.id });
    return {
      code: accepted.mark.code,
      stages: stageStates(found.part, found.door, progress),
      next: nextOf(found, progress),
      ...(accepted.replacement === undefined ? {} : { replacement: accepted.replacement.code }),
    };
  });

  app.get('/board', async () => ({
    doors: store.jobs.all().flatMap(({ plan, document }) => {
      const progress = store.progress(document.id);
      return boardDoors(livePlan(plan, progress), progress);
    }),
  }));
}

function liveAfter(store: Store, code: string): Located | null {
  return store.find(code)?.found ?? null;
}

function nextOf({ part, door }: Located, progress: JobProgress): PartAnswer['next'] {
  const next = nextStage(part, door, progress);
  return next === null ? null : { stage: next.stage, station: next.station };
}

function partAnswer(
  code: string,
  jobName: string,
  found: Located,
  progress: JobProgress,
  station: string,
): PartAnswer {
  const { door, part } = found;
  const next = nextStage(part, door, progress);
  const here = next !== null && isStation(station) && next.station === station ? next : null;
  const replacedBy = own(progress.parts, code)?.replacedBy;
  return {
    code,
    job: { id: progress.job, name: jobName },
    door: door.door,
    mark: door.mark,
    part: part.part,
    length: part.length,
    width: part.width,
    thickness: part.thickness,
    stages: stageStates(part, door, progress),
    here:
      here === null || replacedBy !== undefined
        ? null
        : {
            stage: here.stage,
            station: here.station,
            settings: { ...here.settings },
            ...(here.places === undefined
              ? {}
              : { places: here.places.map((place) => ({ at: place.at, settings: { ...place.settings } })) }),
          },
    next: next === null || replacedBy !== undefined ? null : { stage: next.stage, station: next.station },
    ...(replacedBy === undefined ? {} : { replacedBy }),
  };
}

/** A refusal with its stable code, its words, and what is missing. */
function refuse(
  reply: FastifyReply,
  code: Refusal,
  figures: Readonly<Record<string, string>> = {},
  missing?: readonly string[],
): FastifyReply {
  const body: RefusalBody = {
    code,
    message: say(`refusal.${code}`, { ...figures, missing: (missing ?? []).join(', ') }),
    ...(missing === undefined ? {} : { missing: [...missing] }),
    ...(figures.station === undefined ? {} : { station: figures.station }),
    ...(figures.replacedBy === undefined ? {} : { replacedBy: figures.replacedBy }),
  };
  return reply.code(STATUS[code] ?? 409).send(body);
}
