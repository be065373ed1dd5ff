import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { say } from '#core/words/say.ts';
import { version } from '../../package.json' with { type: 'json' };
import { readEnvironment } from '../hub/environment.ts';
import { slices } from '../store/files/packed.ts';
import { disk } from '../store/files/disk.ts';
import { wordsOf } from '../store/files/file-port.ts';
import type { Restored } from '../store/archive/restore.ts';
import { dataByHub } from './data-by-hub.ts';
import { dataHere } from './data-here.ts';
import { DataFault, type DataWork } from './data-work.ts';
import { endWith } from './end-with.ts';
import { writeOut } from './write-out.ts';

const USAGE = {
  backup: 'backup: expected nothing more, or --list, or OUT.json --with-network-keys',
  restore: 'restore: expected the NAME of a backup, "newest", or --list',
  export: 'export: expected OUT.json',
  import: 'import: expected IN.json',
} as const;
type Verb = keyof typeof USAGE;

/** Backup, restore, export, import. Exit 2: something in the call is wrong; 1: it could not be done, and nothing was changed. */
async function main(): Promise<void> {
  const { verb, name, list, withKeys } = readArguments();
  const environment = readEnvironment(process.env);
  if (!environment.ok) return endWith(2, environment.message);
  const { data, host, port } = environment.value;
  const trouble = await tryIt(async () => {
    const work = (await dataHere(data, version)) ?? dataByHub(`http://${host}:${port}`);
    try {
      if (list) await printList(work);
      else if (withKeys) await withNetworkKeys(work, name);
      else await VERBS[verb](work, name);
    } finally {
      await work.close();
    }
  });
  if (trouble !== null) endWith(1, `${verb}: ${trouble}`);
}

async function tryIt(work: () => Promise<void>): Promise<string | null> {
  try {
    await work();
    return null;
  } catch (error) {
    return wordsOf(error);
  }
}

const VERBS: Readonly<Record<Verb, (work: DataWork, name: string) => Promise<void>>> = {
  async backup(work) {
    const { name, bytes, jobs, entries } = await work.backup();
    process.stdout.write(`${name}\n`);
    process.stderr.write(
      `${jobs} jobs and ${entries} entries of the log in ${bytes} bytes, read back whole\n`,
    );
  },
  async restore(work, name) {
    const chosen = name === 'newest' ? (await work.list())[0]?.name : name;
    if (chosen === undefined) throw new DataFault('there is no backup yet');
    tellRestored(chosen, await work.restore(chosen));
  },
  async export(work, path) {
    await writeOut(work, path, false);
    process.stdout.write(`${path}\n`);
  },
  async import(work, path) {
    if ((await disk.size(path)) === null) throw new DataFault(`there is no file ${path}`);
    tellRestored(path, await work.take(basename(path), slices(disk, path)));
  },
};

async function withNetworkKeys(work: DataWork, path: string): Promise<void> {
  await writeOut(work, path, true);
  process.stdout.write(`${path}\n`);
  process.stderr.write(`${say('network.keys.warning', {}, 'en')}\n`);
}

function tellRestored(from: string, { jobs, entries, made, before, network }: Restored): void {
  process.stdout.write(`${from}\n`);
  process.stderr.write(
    `in place: ${jobs} jobs and ${entries} entries of the log, as of ${made}; what was before is kept as ${before}\n`,
  );
  if (network) process.stderr.write(`${say('network.keys.restored', {}, 'en')}\n`);
}

async function printList(work: DataWork): Promise<void> {
  for (const { name, bytes } of await work.list()) process.stdout.write(`${name} ${bytes}\n`);
}

function readArguments(): { verb: Verb; name: string; list: boolean; withKeys: boolean } {
  const [verb, ...rest] = process.argv.slice(2);
  if (verb === undefined || !isVerb(verb)) return endWith(2, Object.values(USAGE).join('\n'));
  try {
    const { values, positionals } = parseArgs({
      args: rest,
      allowPositionals: true,
      options: {
        list: { type: 'boolean', default: false },
        'with-network-keys': { type: 'boolean', default: false },
      },
    });
    const [name = '', ...more] = positionals;
    const listed = values.list && (verb === 'backup' || verb === 'restore') && name === '';
    const withKeys = values['with-network-keys'];
    const given = !values.list && (verb === 'backup' ? withKeys === (name !== '') : name !== '');
    if (more.length > 0 || !(listed || given) || (withKeys && verb !== 'backup'))
      return endWith(2, USAGE[verb]);
    return { verb, name, list: values.list, withKeys };
  } catch {
    return endWith(2, USAGE[verb]);
  }
}

function isVerb(text: string): text is Verb {
  return Object.hasOwn(USAGE, text);
}

void main();
