import { setTimeout as pause } from 'node:timers/promises';
import pino from 'pino';
import { startHub } from '#main/hub/hub.ts';
import { systemProcesses } from '#main/store/files/process-table.ts';

/** The hub's service with a heart that beats twenty times as fast; PROOF_BOOT is the boot that it takes itself to be in. */
const { SHOULDERLINE_DATA: data = '', PROOF_BOOT: boot } = process.env;
try {
  const hub = await startHub({
    data,
    port: 0,
    host: '127.0.0.1',
    demo: false,
    version: 'proof',
    logger: pino({ level: 'silent' }),
    hold: {
      table: boot === undefined ? systemProcesses : { ...systemProcesses, boot },
      beat: { everyMs: 100, lookMs: 25, stillMs: 500 },
    },
  });
  process.on('SIGTERM', () => void hub.stop().then(() => process.exit(0)));
  process.stdout.write(`LISTENING ${hub.url}\n`);
  const why = await hub.lost;
  process.stdout.write(`LOST ${why}\n`);
  // Who asks meanwhile is told so.
  await pause(300);
  await hub.stop();
  process.exit(3);
} catch (error) {
  process.stdout.write(`REFUSED ${error instanceof Error ? error.message : String(error)}\n`);
  process.exit(1);
}
