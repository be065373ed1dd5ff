import type { Bench } from './thread.ts';
import { doTask } from './do-task.ts';

/**
 * Does tasks in the hub's own thread, giving way between their pieces: for a hub that runs from its sources, which no
 * thread can be started from.
 */
export function here(): Bench {
  let ended: (() => void) | null = null;
  let over = false;
  const turn = async () => {
    await new Promise((again) => setImmediate(again));
    if (over) throw new Error('the thread has ended');
  };
  return {
    do: (task, _spoken, { piece, progress }) =>
      Promise.race([
        doTask(task, {
          async piece(bytes) {
            await piece(bytes);
            await turn();
          },
          async progress(made, of) {
            await progress(made, of);
            await turn();
          },
        }),
        new Promise<never>((_, failed) => {
          ended = () => failed(new Error('the thread has ended'));
        }),
      ]),
    end() {
      over = true;
      ended?.();
      return Promise.resolve();
    },
  };
}
