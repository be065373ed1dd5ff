import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import pino from 'pino';
import { version } from '../../package.json' with { type: 'json' };
import { readEnvironment } from './environment.ts';
import { type Hub, startHub, StartFault } from './hub.ts';
import { RotatedFile } from './log-file.ts';
import { shellLine } from '../printing/shell-line.ts';
import { holdNoPlanOver } from '../store/documents/plan-limit.ts';
import { MANY_DOORS } from '../work/work-desk.ts';

/** The service alone: prints where it listens, ends cleanly on Ctrl-C and SIGTERM. `--demo` may add the demo job. */
async function main(): Promise<void> {
  const read = readEnvironment(process.env);
  if (!read.ok) return fail(read.message);
  const { data, port, host, demo, network } = read.value;
  holdNoPlanOver(MANY_DOORS);
  const said: string[] = [];
  let ready = false;
  // Each line is written at once: what this process died of is the last one.
  const logger = pino({ level: 'info' }, new RotatedFile(join(data, 'hub.log')));
  process.on('uncaughtExceptionMonitor', (error) => logger.fatal(error));
  let hub: Hub;
  try {
    mkdirSync(data, { recursive: true, mode: 0o700 });
    hub = await startHub({
      data,
      port,
      host,
      demo: demo && process.argv.includes('--demo'),
      ui: join(import.meta.dirname, '..', 'ui'),
      version,
      worker: join(import.meta.dirname, 'worker.js'),
      logReader: join(import.meta.dirname, 'log-reader.js'),
      logger,
      shell: shellLine(process),
      network,
      say(line) {
        if (ready) process.stdout.write(`${line}\n`);
        else said.push(line);
      },
    });
  } catch (error) {
    logger.fatal(error);
    return fail(
      error instanceof StartFault ? error.message : error instanceof Error ? error.message : String(error),
    );
  }
  let ending = false;
  const end = (because?: string) => {
    if (ending) return;
    ending = true;
    if (because !== undefined) logger.fatal(because);
    hub.stop().then(
      () => (because === undefined ? process.exit(0) : fail(because)),
      (error: unknown) => fail(String(error)),
    );
  };
  // Who asks meanwhile is told so.
  void hub.lost.then((why) => setTimeout(() => end(why), LAST_ANSWERS_MS));
  process.on('SIGINT', () => end());
  process.on('SIGTERM', () => end());
  process.on('disconnect', () => end());
  process.stdout.write(`LISTENING ${hub.url}\n`);
  ready = true;
  for (const line of said) process.stdout.write(`${line}\n`);
}

const LAST_ANSWERS_MS = 1000;

function fail(message: string): void {
  process.stderr.write(`shoulderline: ${message}\n`);
  process.exit(1);
}

void main();
