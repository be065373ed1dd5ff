import { writeFileSync } from 'node:fs';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { isMainThread } from 'node:worker_threads';

/**
 * Put before the hub by NODE_OPTIONS: at every SIGUSR2 it writes down, in milliseconds, how long the hub's own thread stood
 * still at the longest since the last one.
 */
if (isMainThread) {
  const delay = monitorEventLoopDelay({ resolution: 2 });
  delay.enable();
  process.on('SIGUSR2', () => {
    const { max } = delay;
    delay.reset();
    writeFileSync(process.env.LOOP_DELAY_FILE ?? '/dev/null', String(max / 1e6));
  });
}
