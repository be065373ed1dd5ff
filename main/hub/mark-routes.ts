import type { PartAnswer } from '#core/api/marks-api.ts';
import { readPartCode } from '#core/codes/read-code.ts';
import { isStation } from '#core/stages/stations.ts';
import type { PlanStage } from '#core/plan/plan.ts';
import { type Located, locate } from '#core/marks/live-plan.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import { own } from '#core/marks/progress.ts';
import { nextStage, stageStates } from '#core/marks/stage-state.ts';
import type { Store } from '../store/store.ts';
import { refusal } from './problem.ts';
import type { Serve } from './serve.ts';

/** GET /parts/:code, POST /marks, GET /board. */
export function markRoutes(serve: Serve, store: Store): void {
  serve('GET /parts/:code', async ({ params, query }) => {
    const code = partCodeOf(params.code);
    const known = store.find(code);
    if (known === null) throw refusal(store.findBinned(code) === null ? 'unknown-code' : 'binned', { code });
    return partAnswer(code, known.stored.summary.job, known.found, known.progress, query.station ?? '');
  });

  serve('POST /marks', async ({ body }) => {
    const code = partCodeOf(body.code);
    const marked = await store.mark({ ...body, code });
    if (!marked.ok)
      throw refusal(marked.code, { ...marked.figures, code, stage: body.stage }, marked.missing);
    const { accepted, progress, stored } = marked;
    const live = accepted.replacement?.code ?? accepted.mark.code;
    // One that was answered before its job was put into the bin is answered the same.
    const found = store.find(live)?.found ?? locate(stored.index, progress, live);
    if (found === null) throw refusal('unknown-code', { code });
    return {
      code: accepted.mark.code,
      stages: stageStates(found.part, found.door, progress),
      next: nextOf(found, progress),
      ...(accepted.replacement === undefined ? {} : { replacement: accepted.replacement.code }),
    };
  });

  serve('GET /board', async () => ({ doors: store.board() }));
}

/** A part's code as written on its sticker, however it was typed; refuses (400) what is none. */
function partCodeOf(text: string): string {
  const code = readPartCode(text);
  if (code.kind !== 'part') throw refusal(code.kind);
  return code.code;
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
    here: here === null || replacedBy !== undefined ? null : setUpOf(here),
    next: next === null || replacedBy !== undefined ? null : { stage: next.stage, station: next.station },
    ...(replacedBy === undefined ? {} : { replacedBy }),
  };
}

/** What is set at a stage: all of it but its forerunners. */
function setUpOf(stage: PlanStage): NonNullable<PartAnswer['here']> {
  const { after: _before, why: _reasons, ...setUp } = stage;
  return setUp;
}
