import { join } from 'node:path';
import { build } from 'vite';

const ROOT = join(import.meta.dirname, '..', '..');

/** Builds a file of this folder that is run in a process of its own; gives the path of what is run. */
export async function builtEntry(name: string): Promise<string> {
  // Inside the project, so that packages are found; of this process alone.
  const out = join(ROOT, 'dist', 'proof', String(process.pid), name);
  await build({
    root: ROOT,
    configFile: false,
    logLevel: 'warn',
    // With its packages in one file it starts in half the time.
    ssr: { noExternal: true },
    build: {
      ssr: join(import.meta.dirname, `${name}.ts`),
      outDir: out,
      emptyOutDir: true,
      minify: false,
      target: 'node20',
    },
  });
  return join(out, `${name.replace(/.*\//, '')}.js`);
}
