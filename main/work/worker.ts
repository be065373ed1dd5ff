import { setPriority } from 'node:os';
import { parentPort } from 'node:worker_threads';
import { speak } from '#core/words/say.ts';
import { doTask } from './do-task.ts';
import type { Said, Told } from './messages.ts';
import type { Tasks, TaskKind } from './tasks.ts';

/** So much less is this thread's turn than that of the one that answers marks. */
const BEHIND = 10;
/** So many pieces of an answer are on their way at once. */
const PIECES_AHEAD = 4;
/** Between one telling of the progress and the next. */
const TELL_MS = 100;

/** Does tasks one after another, each as it comes. What is not wanted any more ends with its thread. */
function work(): void {
  const port = parentPort;
  if (port === null) throw new Error('this is the entry of a thread');
  // Linux has priorities by thread; elsewhere it would be the whole hub's.
  if (process.platform === 'linux') setPriority(BEHIND);
  let room = PIECES_AHEAD;
  let roomAgain: (() => void) | null = null;
  const say = (said: Said, ...bytes: ArrayBuffer[]) => port.postMessage(said, bytes);
  port.on('message', (told: Told) => {
    if ('more' in told) {
      room += told.more;
      roomAgain?.();
      return;
    }
    const { task, number, spoken } = told;
    speak(spoken);
    room = PIECES_AHEAD;
    let toldAt = -Infinity;
    doTask(task, {
      async piece(bytes) {
        const own = ofItsOwn(bytes);
        say({ number, piece: own }, own.buffer);
        room -= 1;
        if (room <= 0) await new Promise<void>((again) => (roomAgain = again));
      },
      async progress(made, of) {
        const now = performance.now();
        if (made < of && now - toldAt < TELL_MS) return;
        toldAt = now;
        say({ number, made, of });
      },
    }).then(
      (given) => {
        const done = withOwnBytes(given);
        say({ number, done }, ...bytesIn(done));
      },
      (error: unknown) =>
        say({ number, failed: error instanceof Error ? (error.stack ?? error.message) : String(error) }),
    );
  });
}

/** The same bytes in memory that nothing else is in: only that can be handed over. */
function ofItsOwn(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  return isOnItsOwn(bytes) ? bytes : new Uint8Array(bytes);
}

function isOnItsOwn(bytes: Uint8Array): bytes is Uint8Array<ArrayBuffer> {
  return bytes.buffer instanceof ArrayBuffer && bytes.byteLength === bytes.buffer.byteLength;
}

type Given = Tasks[TaskKind]['gives'];

function withOwnBytes(given: Given): Given {
  if (given === null || !('ok' in given) || !given.ok || 'plan' in given) return given;
  return 'paper' in given
    ? { ...given, paper: { ...given.paper, pdf: ofItsOwn(given.paper.pdf) } }
    : { ...given, pdf: ofItsOwn(given.pdf) };
}

function bytesIn(given: Given): ArrayBuffer[] {
  if (given === null || !('ok' in given) || !given.ok) return [];
  if ('plan' in given) return [given.plan.tables, given.plan.lines];
  const { buffer } = 'paper' in given ? given.paper.pdf : given.pdf;
  return buffer instanceof ArrayBuffer ? [buffer] : [];
}

work();
