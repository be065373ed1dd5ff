import type { PartAnswer } from '#core/api/marks-api.ts';
import { readPartCode } from '#core/codes/read-code.ts';
import { isStation } from '#core/stages/stations.ts';
import type { MarkedPart } from '#core/marks/judge-mark.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import { own } from '#core/marks/progress.ts';
import { nextStage, stageStates } from '#core/marks/stage-state.ts';
import type { PartInFull } from '../store/documents/stored-job.ts';
import type { Found, Store } from '../store/store.ts';
import { jsonInPieces, listText } from './json-pieces.ts';
import { refusal } from './problem.ts';
import type { Serve } from './serve.ts';

/** GET /parts/:code, POST /marks, GET /board. */
export function markRoutes(serve: Serve, store: Store): void {
  serve('GET /parts/:code', async ({ params, query }) => {
    const code = partCodeOf(params.code);
    const known = await store.findInFull(code);
    if (known === null) throw refusal(store.findBinned(code) === null ? 'unknown-code' : 'binned', { code });
    return partAnswer(code, known, query.station ?? '');
  });

  serve('POST /marks', async ({ body }) => {
    const code = partCodeOf(body.code);
    const marked = await store.mark({ ...body, code });
    if (!marked.ok)
      throw refusal(marked.code, { ...marked.figures, code, stage: body.stage }, marked.missing);
    const { accepted, progress, stored } = marked;
    const live = accepted.replacement?.code ?? accepted.mark.code;
    // One that was answered before its job was put into the bin is answered the same.
    const found = store.find(live)?.found ?? stored.index.locate(progress, live);
    if (found === null) throw refusal('unknown-code', { code });
    return {
      code: accepted.mark.code,
      stages: stageStates(found.part, found.door, progress),
      next: nextOf(found, progress),
      ...(accepted.replacement === undefined ? {} : { replacement: accepted.replacement.code }),
    };
  });

  serve('GET /board', async ({ reply }) =>
    jsonInPieces(reply, ['{"doors":[', ...(await listText(store.boardLines())), ']}']),
  );
}

/** A part's code as written on its sticker, however it was typed; refuses (400) what is none. */
function partCodeOf(text: string): string {
  const code = readPartCode(text);
  if (code.kind !== 'part') throw refusal(code.kind);
  return code.code;
}

function nextOf({ part, door }: MarkedPart, progress: JobProgress): PartAnswer['next'] {
  const next = nextStage(part, door, progress);
  return next === null ? null : { stage: next.stage, station: next.station };
}

function partAnswer(
  code: string,
  { stored, found, progress, full }: Found & { readonly full: PartInFull },
  station: string,
): PartAnswer {
  const { door, part } = found;
  const next = nextStage(part, door, progress);
  const here =
    next !== null && isStation(station) && next.station === station
      ? ([...full.stages, ...full.doorStages].find(({ stage }) => stage === next.stage) ?? null)
      : null;
  const replacedBy = own(progress.parts, code)?.replacedBy;
  return {
    code,
    job: { id: progress.job, name: stored.summary.job },
    door: door.door,
    mark: door.mark,
    part: part.part,
    length: full.length,
    width: full.width,
    thickness: full.thickness,
    stages: stageStates(part, door, progress),
    here: here === null || replacedBy !== undefined ? null : setUpOf(here),
    next: next === null || replacedBy !== undefined ? null : { stage: next.stage, station: next.station },
    ...(replacedBy === undefined ? {} : { replacedBy }),
  };
}

/** What is set at a stage: all of it but its forerunners. */
function setUpOf(full: PartInFull['stages'][number]): NonNullable<PartAnswer['here']> {
  const { after: _before, why: _reasons, ...setUp } = full;
  return setUp;
}
