import { writeSync } from 'node:fs';

const STDERR = 2;
/** How long to wait for a reader that is slower than we are. */
const PAUSE_MS = 5;
const pause = new Int32Array(new SharedArrayBuffer(4));

/** Ends a command with an exit code, after all of a message and its line's end are through to stderr. */
export function endWith(code: number, message: string): never {
  let rest = Buffer.from(`${message}\n`);
  while (rest.length > 0) {
    try {
      rest = rest.subarray(writeSync(STDERR, rest));
    } catch (error) {
      // A pipe that is full for now; any other trouble means that nobody reads.
      if (!(error instanceof Error && 'code' in error && error.code === 'EAGAIN')) break;
      Atomics.wait(pause, 0, 0, PAUSE_MS);
    }
  }
  process.exit(code);
}
