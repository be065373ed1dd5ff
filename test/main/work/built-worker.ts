import { builtinModules } from 'node:module';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';

const root = join(import.meta.dirname, '..', '..', '..');

/** Builds a thread's file from the sources as they are, as the hub's build does; gives the folder and the file in it. */
export async function builtWorker(): Promise<{ readonly folder: string; readonly entry: string }> {
  const folder = mkdtempSync(join(tmpdir(), 'shoulderline-worker-'));
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: true,
      outDir: folder,
      minify: false,
      rolldownOptions: {
        input: { worker: join(root, 'main', 'work', 'worker.ts') },
        external: [...builtinModules, /^node:/],
        output: { entryFileNames: '[name].mjs', chunkFileNames: '[name].mjs' },
      },
    },
  });
  return { folder, entry: join(folder, 'worker.mjs') };
}
