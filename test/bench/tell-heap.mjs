/** Loaded before the hub with --expose-gc: on SIGUSR2 it says on stderr how much is in use once all garbage is gone, in the heap and in tables outside it. */
process.on('SIGUSR2', () => {
  for (let k = 0; k < 4; k += 1) globalThis.gc();
  const { heapUsed, external } = process.memoryUsage();
  process.stderr.write(`HEAP ${heapUsed + external}\n`);
});
