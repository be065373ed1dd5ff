import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { version } from '../../package.json' with { type: 'json' };
import { readEnvironment } from '../hub/environment.ts';
import { slices } from '../store/files/packed.ts';
import { disk } from '../store/files/disk.ts';
import { wordsOf, writeAll } from '../store/files/file-port.ts';
import { dataByHub } from './data-by-hub.ts';
import { dataHere } from './data-here.ts';
import { DataFault, type DataWork } from './data-work.ts';
import { endWith } from './end-with.ts';

const USAGE = {
  backup: 'backup: expected nothing more, or --list',
  restore: 'restore: expected the NAME of a backup, "newest", or --list',
  export: 'export: expected OUT.json',
  import: 'import: expected IN.json',
} as const;
type Verb = keyof typeof USAGE;

/** Backup, restore, export, import. Exit 2: something in the call is wrong; 1: it could not be done, and nothing was changed. */
async function main(): Promise<void> {
  const { verb, name, list } = readArguments();
  const environment = readEnvironment(process.env);
  if (!environment.ok) return endWith(2, environment.message);
  const { data, host, port } = environment.value;
  const trouble = await tryIt(async () => {
    const work = (await dataHere(data, version)) ?? dataByHub(`http://${host}:${port}`);
    try {
      if (list) await printList(work);
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
    const { jobs, entries, made, before } = await work.restore(chosen);
    process.stdout.write(`${chosen}\n`);
    process.stderr.write(
      `in place: ${jobs} jobs and ${entries} entries of the log, as of ${made}; what was before is kept as ${before}\n`,
    );
  },
  async export(work, path) {
    const file = await disk.create(path);
    try {
      for await (const piece of await work.everything())
        await writeAll(file, typeof piece === 'string' ? Buffer.from(piece) : piece);
      await file.flush();
    } finally {
      await file.close();
    }
    process.stdout.write(`${path}\n`);
  },
  async import(work, path) {
    if ((await disk.size(path)) === null) throw new DataFault(`there is no file ${path}`);
    const { jobs, entries, made, before } = await work.take(basename(path), slices(disk, path));
    process.stdout.write(`${path}\n`);
    process.stderr.write(
      `in place: ${jobs} jobs and ${entries} entries of the log, as of ${made}; what was before is kept as ${before}\n`,
    );
  },
};

async function printList(work: DataWork): Promise<void> {
  for (const { name, bytes } of await work.list()) process.stdout.write(`${name} ${bytes}\n`);
}

function readArguments(): { verb: Verb; name: string; list: boolean } {
  const [verb, ...rest] = process.argv.slice(2);
  if (verb === undefined || !isVerb(verb)) return endWith(2, Object.values(USAGE).join('\n'));
  try {
    const { values, positionals } = parseArgs({
      args: rest,
      allowPositionals: true,
      options: { list: { type: 'boolean', default: false } },
    });
    const [name = '', ...more] = positionals;
    const listed = values.list && (verb === 'backup' || verb === 'restore') && name === '';
    const given = !values.list && (verb === 'backup' ? name === '' : name !== '');
    if (more.length > 0 || !(listed || given)) return endWith(2, USAGE[verb]);
    return { verb, name, list: values.list };
  } catch {
    return endWith(2, USAGE[verb]);
  }
}

function isVerb(text: string): text is Verb {
  return Object.hasOwn(USAGE, text);
}

void main();
