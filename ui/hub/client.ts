import { z } from 'zod';
import {
  boardAnswer,
  jobProgress,
  markAnswer,
  partAnswer,
  refusal,
  type RefusalBody,
} from '#core/api/marks-api.ts';
import {
  faultsBody,
  jobChanged,
  jobFileAnswer,
  jobSaved,
  jobsAnswer,
  measuredAnswer,
} from '#core/api/jobs-api.ts';
import {
  backupMade,
  backupsAnswer,
  healthAnswer,
  leftAnswer,
  restoredAnswer,
  sessionAnswer,
} from '#core/api/office-api.ts';
import { planAnswer } from '#core/api/plan-api.ts';
import { shopAnswer, type ShopFile } from '#core/api/shop-api.ts';
import {
  printedAnswer,
  printersAnswer,
  type PrintedReport,
  type PrintRequest,
  printState,
  printTaken,
  toPrintAnswer,
} from '#core/api/prints-api.ts';
import { stocksAnswer } from '#core/api/stocks-api.ts';
import type { Mark } from '#core/marks/mark.ts';
import type { Plan } from '#core/plan/plan.ts';
import { spokenNow } from '#core/words/say.ts';

/** What the hub answered: the thing asked for, a refusal with its code and words, faults of a job file, or nothing at all. */
export type Answer<T> =
  | { readonly kind: 'ok'; readonly value: T }
  | { readonly kind: 'refused'; readonly status: number; readonly refusal: RefusalBody }
  | { readonly kind: 'faults'; readonly faults: z.infer<typeof faultsBody>['errors'] }
  | { readonly kind: 'away' };

const NOTHING = z.null();
/** What stands at the head of a sheet of stickers. */
const laidOut = z.object({ stickers: z.number() });
const PATIENCE_MS = 8000;
/** For what the hub has to reckon first. */
const LONG_PATIENCE_MS = 30_000;
/** For a whole shop’s data to come in and be read back. */
const IMPORT_PATIENCE_MS = 600_000;

async function ask<S extends z.ZodType>(
  schema: S,
  path: string,
  method = 'GET',
  body?: unknown,
  patience = PATIENCE_MS,
): Promise<Answer<z.infer<S>>> {
  let response: Response;
  let json: unknown;
  try {
    response = await fetch(`/api${path}`, {
      method,
      signal: AbortSignal.timeout(patience),
      headers: {
        'accept-language': spokenNow(),
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      },
      ...(body === undefined ? {} : { body: body instanceof Blob ? body : JSON.stringify(body) }),
    });
    json = response.status === 204 ? null : await response.json();
  } catch {
    return { kind: 'away' };
  }
  if (response.ok) return { kind: 'ok', value: schema.parse(json) };
  const faults = faultsBody.safeParse(json);
  if (faults.success) return { kind: 'faults', faults: faults.data.errors };
  const refused = refusal.safeParse(json);
  return refused.success
    ? { kind: 'refused', status: response.status, refusal: refused.data }
    : { kind: 'away' };
}

/** A text as a step of an address; half a character, which none can hold, as a sign for it. */
const id = (text: string) => encodeURIComponent(text.replace(/\p{Cs}/gu, '\u{fffd}'));

/** The hub's API, typed: every answer is checked as it comes in. */
export const hub = {
  health: () => ask(healthAnswer, '/health'),
  jobs: () => ask(jobsAnswer, '/jobs'),
  plan: (job: string): Promise<Answer<Plan>> => ask(planAnswer, `/jobs/${id(job)}`),
  explained: (job: string): Promise<Answer<Plan>> =>
    ask(planAnswer, `/jobs/${id(job)}?why=1`, 'GET', undefined, LONG_PATIENCE_MS),
  progress: (job: string) => ask(jobProgress, `/jobs/${id(job)}/progress`),
  jobFile: (job: string) => ask(jobFileAnswer, `/jobs/${id(job)}/file`),
  addJob: (file: unknown) => ask(jobSaved, '/jobs', 'POST', file),
  updateJob: (job: string, revision: number, file: unknown) =>
    ask(jobChanged, `/jobs/${id(job)}`, 'PUT', { revision, file }),
  /** What would come of it; nothing is saved. */
  tryJob: (job: string, revision: number, file: unknown) =>
    ask(jobChanged, `/jobs/${id(job)}?dry=1`, 'PUT', { revision, file }),
  removeJob: (job: string) => ask(NOTHING, `/jobs/${id(job)}`, 'DELETE'),
  part: (code: string, station: string) => ask(partAnswer, `/parts/${id(code)}?station=${id(station)}`),
  mark: (mark: Mark) => ask(markAnswer, '/marks', 'POST', mark),
  board: () => ask(boardAnswer, '/board'),
  measure: (job: string, revision: number, measured: Readonly<Record<string, unknown>>) =>
    ask(measuredAnswer, `/jobs/${id(job)}/measured`, 'PUT', { revision, measured }),
  /** What would come of it; nothing is saved. */
  tryMeasure: (job: string, revision: number, measured: Readonly<Record<string, unknown>>) =>
    ask(measuredAnswer, `/jobs/${id(job)}/measured?dry=1`, 'PUT', { revision, measured }),
  shop: () => ask(shopAnswer, '/shop'),
  saveShop: (revision: number, shop: ShopFile) => ask(shopAnswer, '/shop', 'PUT', { revision, shop }),
  session: () => ask(sessionAnswer, '/session'),
  enter: (pin: string) => ask(sessionAnswer, '/session', 'POST', { pin }),
  lock: () => ask(sessionAnswer, '/session', 'DELETE'),
  setPin: (pin: string | null) => ask(sessionAnswer, '/pin', 'PUT', { pin }),
  leaveFullScreen: () => ask(leftAnswer, '/kiosk/leave', 'POST', {}),
  backups: () => ask(backupsAnswer, '/backups'),
  backUp: () => ask(backupMade, '/backups', 'POST', {}, LONG_PATIENCE_MS),
  restore: (name: string) =>
    ask(restoredAnswer, `/backups/${id(name)}/restore`, 'POST', {}, LONG_PATIENCE_MS),
  stocks: () => ask(stocksAnswer, '/stocks'),
  calibrationAddress: (stock: string) => `/api/stocks/${id(stock)}/calibration.pdf`,
  importFile: (file: Blob) => ask(restoredAnswer, '/import', 'POST', file, IMPORT_PATIENCE_MS),
  printers: () => ask(printersAnswer, '/printers'),
  startPrint: (request: PrintRequest) => ask(printTaken, '/prints', 'POST', request),
  printState: (print: string) => ask(printState, `/prints/${id(print)}`),
  cancelPrint: (print: string) => ask(printState, `/prints/${id(print)}`, 'DELETE'),
  reportPrinted: (job: string, report: PrintedReport) =>
    ask(printedAnswer, `/jobs/${id(job)}/printed`, 'POST', report),
  toPrint: () => ask(toPrintAnswer, '/stickers'),
  printed: (job: string) => ask(printedAnswer, `/jobs/${id(job)}/printed`),
  papersAddress: (job: string, kind: string, paper: string) =>
    `/api/jobs/${id(job)}/papers.pdf?kind=${id(kind)}&paper=${id(paper)}`,
  /** How many stickers stand at such an address: a part may take two. Null while the hub does not tell. */
  async stickersAt(address: string): Promise<number | null> {
    try {
      const response = await fetch(address, { signal: AbortSignal.timeout(LONG_PATIENCE_MS) });
      await response.body?.cancel();
      return laidOut.parse(JSON.parse(response.headers.get('x-stickers') ?? 'null')).stickers;
    } catch {
      return null;
    }
  },
  stickersAddress: (job: string, stock: string, from: number, codes?: readonly string[]) =>
    `/api/jobs/${id(job)}/stickers.pdf?stock=${id(stock)}&from=${from}${codes === undefined ? '' : `&codes=${codes.join(',')}`}`,
};
