import { speakDoors, speakPlan } from '#core/telling/speak-plan.ts';
import { papersPdf } from '#labels/papers/papers-pdf.ts';
import { stickersPdf } from '#labels/stickers/stickers-pdf.ts';
import { makeJob } from '../store/documents/make-job.ts';
import { listDoors } from './list-doors.ts';
import { makePrint } from './make-print.ts';
import { planFrom } from './plan-source.ts';
import { planOfPaper } from './plan-of-paper.ts';
import { shopStocks } from './shop-stocks.ts';
import type { StickersMade, Task, TaskKind, Tasks, Telling } from './tasks.ts';

type Doing = {
  readonly [K in TaskKind]: (asked: Tasks[K]['asked'], telling: Telling) => Promise<Tasks[K]['gives']>;
};

const DOING: Doing = {
  plan: ({ source, language, why }, telling) =>
    inPieces(speakPlan(planFrom(source, why ? language : null), language), telling),
  door: async ({ source, language, why, door: name, mark }, telling) => {
    const plan = planFrom(source, why ? language : null, [mark]);
    const [door] = speakDoors(
      plan.doors.filter(({ door }) => door === name),
      plan.units,
      language,
    );
    if (door === undefined) throw new Error('a door that a plan has is in it');
    await telling.piece(Buffer.from(JSON.stringify(door)));
    return null;
  },
  doors: async ({ source, language }, telling) => {
    await telling.piece(Buffer.from(JSON.stringify(listDoors(planFrom(source), language))));
    return null;
  },
  stickers: async ({ source, tools, stock, from, codes, symbol }, { progress }) => {
    const made = await stickersPdf(planFrom(source), {
      stock,
      from,
      stocks: shopStocks(tools),
      progress,
      ...(codes === undefined ? {} : { codes }),
      ...(symbol === undefined ? {} : { symbol }),
    });
    if (!made.ok) return made;
    const { pdf, parts, stickers, pages, doubled, tooLarge } = made;
    return {
      ok: true,
      pdf,
      counts: { parts, stickers, pages },
      doubled: { count: doubled.length, codes: doubled.slice(0, MOST_NAMED) },
      tooLarge: {
        count: tooLarge.length,
        parts: tooLarge.slice(0, MOST_NAMED).map(({ code, state, fits }) => ({ code, state, fits })),
      },
    } satisfies StickersMade;
  },
  papers: ({ source, doors, of: kind, paper }, { progress }) =>
    papersPdf(planOfPaper(source, kind, doors), {
      kind,
      paper,
      progress,
      ...(doors === undefined ? {} : { doors }),
    }),
  print: (asked, { progress }) => makePrint(asked, progress),
  job: async ({ asked }) => makeJob(asked),
};

const MOST_NAMED = 50;

/** Does what is asked for, here and now. */
export function doTask<K extends TaskKind>(task: Task<K>, telling: Telling): Promise<Tasks[K]['gives']> {
  // A kind and what is asked by it belong together, which its union does not say.
  const doing = DOING[task.kind];
  return doing(task, telling);
}

/** So much of an answer goes at once. */
const PIECE = 256 * 1024;

/** A plan as it is answered, door by door, so that its text is never held whole. */
async function inPieces(plan: ReturnType<typeof speakPlan>, { piece }: Telling): Promise<null> {
  const { doors, ...about } = plan;
  let text = `${JSON.stringify(about).slice(0, -1)},"doors":[`;
  for (const [k, door] of doors.entries()) {
    text += `${k === 0 ? '' : ','}${JSON.stringify(door)}`;
    if (text.length < PIECE) continue;
    await piece(Buffer.from(text));
    text = '';
  }
  await piece(Buffer.from(`${text}]}`));
  return null;
}
