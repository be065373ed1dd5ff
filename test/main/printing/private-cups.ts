import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir, userInfo } from 'node:os';
import { join } from 'node:path';

const CUPSD = ['/usr/sbin/cupsd', '/usr/local/sbin/cupsd'].find((path) => existsSync(path));
const PPD = '/usr/share/ppd/cups-pdf/CUPS-PDF_noopt.ppd';
const PARTS = '/usr/lib/cups';

/** What is missing here to print for real; null when nothing is. */
export function missingForPrinting(): string | null {
  if (CUPSD === undefined) return 'cupsd';
  if (!existsSync(PPD) || !existsSync(join(PARTS, 'backend', 'cups-pdf'))) return 'cups-pdf';
  return process.getuid?.() === 0 ? null : 'root, which cups-pdf runs as';
}

/** A backend that reads the paper and then fails, as a printer does whose cable is out. */
const BROKEN = `#!/bin/sh
[ $# -eq 0 ] && { echo 'direct broken "Unknown" "broken"'; exit 0; }
cat > /dev/null
echo "ERROR: The cable is out." >&2
exit 1
`;

/** A scheduler of its own on loopback: nothing of it touches the machine's own printers. */
export class PrivateCups {
  readonly #folder: string;
  readonly #daemon: ChildProcess;
  readonly env: NodeJS.ProcessEnv;

  private constructor(folder: string, daemon: ChildProcess, port: number) {
    this.#folder = folder;
    this.#daemon = daemon;
    this.env = { ...process.env, LC_ALL: 'C', CUPS_SERVER: `127.0.0.1:${port}` };
  }

  static async start(): Promise<PrivateCups> {
    if (CUPSD === undefined) throw new Error('there is no cupsd here');
    const folder = mkdtempSync(join(tmpdir(), 'shoulderline-cups-'));
    chmodSync(folder, 0o755);
    for (const name of ['root', 'spool', 'spool/tmp', 'cache', 'state', 'log', 'bin', 'bin/backend'])
      mkdirSync(join(folder, name));
    for (const name of readdirSync(PARTS).filter((each) => each !== 'backend'))
      symlinkSync(join(PARTS, name), join(folder, 'bin', name));
    for (const name of ['cups-pdf', 'socket'])
      symlinkSync(join(PARTS, 'backend', name), join(folder, 'bin', 'backend', name));
    writeFileSync(join(folder, 'bin', 'backend', 'broken'), BROKEN, { mode: 0o700 });
    const port = await freePort();
    const open = 'Order allow,deny\nAllow from 127.0.0.1\n';
    writeFileSync(
      join(folder, 'cupsd.conf'),
      `Listen 127.0.0.1:${port}\nBrowsing No\nDefaultAuthType None\nLogLevel warn\n<Location />\n${open}</Location>\n<Location /admin>\n${open}</Location>\n<Policy default>\n<Limit All>\nOrder deny,allow\nAllow from 127.0.0.1\n</Limit>\n</Policy>\n`,
    );
    writeFileSync(
      join(folder, 'cups-files.conf'),
      [
        ['ServerRoot', 'root'],
        ['ServerBin', 'bin'],
        ['RequestRoot', 'spool'],
        ['TempDir', 'spool/tmp'],
        ['CacheDir', 'cache'],
        ['StateDir', 'state'],
        ['AccessLog', 'log/access'],
        ['ErrorLog', 'log/error'],
        ['PageLog', 'log/page'],
      ]
        .map(([key, name]) => `${key} ${join(folder, name ?? '')}\n`)
        .join(''),
    );
    const daemon = spawn(
      CUPSD,
      ['-f', '-c', join(folder, 'cupsd.conf'), '-s', join(folder, 'cups-files.conf')],
      { stdio: 'ignore' },
    );
    const cups = new PrivateCups(folder, daemon, port);
    for (let tries = 0; tries < 100; tries += 1) {
      if (cups.#do('lpstat', '-r').includes('is running')) return cups;
      await new Promise((later) => setTimeout(later, 100));
    }
    const log = join(folder, 'log', 'error');
    throw new Error(`cupsd does not answer: ${existsSync(log) ? readFileSync(log, 'utf8') : 'no log'}`);
  }

  /** Adds a queue that prints to a PDF file, or one with nothing behind it that answers. */
  add(name: string, behind: 'pdf' | 'broken', policy: 'abort-job' | 'stop-printer' = 'stop-printer'): void {
    const device = behind === 'pdf' ? ['-v', 'cups-pdf:/', '-P', PPD] : ['-v', 'broken:/out'];
    this.#do('lpadmin', '-p', name, '-E', ...device, '-o', `printer-error-policy=${policy}`);
  }

  stopPrinter(name: string, reason: string): void {
    this.#do('cupsdisable', '-r', reason, name);
  }

  refuse(name: string, reason: string): void {
    this.#do('cupsreject', '-r', reason, name);
  }

  /** Jobs that a queue still holds. */
  waiting(name: string): string {
    return this.#do('lpstat', '-W', 'not-completed', '-o', name);
  }

  async stop(): Promise<void> {
    const gone = new Promise((ended) => this.#daemon.once('exit', ended));
    if (this.#daemon.exitCode === null && this.#daemon.kill('SIGTERM')) await gone;
    rmSync(this.#folder, { recursive: true, force: true });
  }

  #do(program: string, ...args: string[]): string {
    return spawnSync(program, args, { env: this.env, encoding: 'utf8' }).stdout;
  }
}

/** What cups-pdf has printed for the user of the tests: into the home that the system knows, whatever HOME says. */
export function printedFiles(): ReadonlyMap<string, Buffer> {
  const folder = join(userInfo().homedir, 'PDF');
  if (!existsSync(folder)) return new Map();
  return new Map(readdirSync(folder).map((name) => [join(folder, name), readFileSync(join(folder, name))]));
}

function freePort(): Promise<number> {
  return new Promise((found, failed) => {
    const server = createServer();
    server.on('error', failed);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => found(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}
