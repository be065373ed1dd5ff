import { svelte } from '@sveltejs/vite-plugin-svelte';
import { svelteTesting } from '@testing-library/svelte/vite';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { availableParallelism } from 'node:os';
import { extname, join } from 'node:path';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { SCREENS_NAME } from './core/api/screens-named.ts';
import { buildBegins } from './main/start/build-if-stale.mjs';

/** No test is timed: this only ends one that hangs, on a slow and busy machine too. */
const PATIENCE_MS = 120_000;
const nodeBuiltins = [...builtinModules, /^node:/];

/** What is built is always what a shop works with: with another NODE_ENV around, the screens would keep nothing for when the hub is away. */
const alwaysForUse: Plugin = {
  name: 'always-for-use',
  apply: 'build',
  config() {
    process.env.NODE_ENV = 'production';
  },
};

/** The hub is plain Node: an import of electron anywhere in it fails the build. */
const hubWithoutElectron: Plugin = {
  name: 'hub-without-electron',
  applyToEnvironment: ({ name }) => name === 'hub',
  resolveId: {
    order: 'pre',
    handler(source, importer) {
      if (source === 'electron' || source.startsWith('electron/'))
        this.error(`the hub must not import electron (imported from ${importer ?? 'an entry'})`);
    },
  },
};

/** Writes into the page which build of the screens it is of: whatever is in one is in the names of its files, or in the page. */
const nameOfScreens: Plugin = {
  name: 'name-of-screens',
  applyToEnvironment: ({ name }) => name === 'client',
  transformIndexHtml: {
    order: 'post',
    handler(html, { bundle, filename }) {
      if (bundle === undefined || filename.includes('pairing')) return [];
      const made = createHash('sha256').update(html);
      for (const name of Object.keys(bundle).sort()) if (!name.endsWith('.map')) made.update(`\n${name}`);
      const content = made.digest('base64url').slice(0, 22);
      return [{ tag: 'meta', attrs: { name: SCREENS_NAME, content }, injectTo: 'head' }];
    },
  },
};

/** Tells the service worker what the build made for the screens, so that it can keep all of it. */
const listOfScreens: Plugin = {
  name: 'list-of-screens',
  applyToEnvironment: ({ name }) => name === 'client',
  generateBundle(_options, bundle) {
    const names = Object.keys(bundle).filter((name) => name.startsWith('assets/') && !name.endsWith('.map'));
    this.emitFile({
      type: 'asset',
      fileName: 'screens.json',
      source: JSON.stringify(names.map((name) => `/${name}`).sort()),
    });
  },
};

/** A file of ui/install under a name that carries a hash of what is in it, as every asset's does: so the service worker keeps it. */
function installed(name: string, source: string | Buffer = readFileSync(join(INSTALL, name))) {
  const hash = createHash('sha256').update(source).digest('base64url').slice(0, 8);
  const end = extname(name);
  return { fileName: `assets/${name.slice(0, -end.length)}-${hash}${end}`, source };
}
const INSTALL = join(import.meta.dirname, 'ui/install');
/** What a device needs to put the screens among its programs. Only who is paired gets a page that names the manifest. */
const installable: Plugin = {
  name: 'installable',
  applyToEnvironment: ({ name }) => name === 'client',
  generateBundle() {
    for (const file of [MANIFEST, ...ICONS.values()]) this.emitFile({ type: 'asset', ...file });
  },
  transformIndexHtml(_html, { filename }) {
    const link = (rel: string, { fileName }: { fileName: string }, more: Record<string, string> = {}) => ({
      tag: 'link',
      attrs: { rel, href: `/${fileName}`, ...more },
      injectTo: 'head' as const,
    });
    const icon = (name: string) => ICONS.get(name) ?? MANIFEST;
    return [
      link('icon', icon('mark.svg'), { type: 'image/svg+xml' }),
      link('apple-touch-icon', icon('icon-180.png')),
      // Without its cookie a device is not known, and would be refused.
      ...(filename.endsWith('/pairing/index.html')
        ? []
        : [link('manifest', MANIFEST, { crossorigin: 'use-credentials' })]),
    ];
  },
};
const ICONS = new Map(
  ['mark.svg', 'icon-180.png', 'icon-192.png', 'icon-512.png'].map(
    (name) => [name, installed(name)] as const,
  ),
);
const MANIFEST = installed(
  'app.webmanifest',
  readFileSync(join(INSTALL, 'app.webmanifest'), 'utf8').replace(
    /(?<="src": ")[^"]+/g,
    (name) => `/${ICONS.get(name)?.fileName ?? name}`,
  ),
);

const server = (
  outDir: string,
  input: Record<string, string>,
  format: 'es' | 'cjs',
  external: (string | RegExp)[] = [],
) => ({
  consumer: 'server' as const,
  build: {
    outDir,
    emptyOutDir: true,
    ssr: true,
    minify: false,
    sourcemap: true,
    rolldownOptions: {
      input,
      external: [...nodeBuiltins, ...external],
      output: {
        format,
        entryFileNames: format === 'cjs' ? '[name].cjs' : '[name].js',
        chunkFileNames: 'chunks/[name]-[hash].js',
      },
    },
  },
});

export default defineConfig({
  root: import.meta.dirname,
  clearScreen: false,
  plugins: [
    alwaysForUse,
    svelte({ configFile: false }),
    hubWithoutElectron,
    installable,
    nameOfScreens,
    listOfScreens,
  ],
  environments: {
    client: {
      build: {
        outDir: 'dist/ui',
        emptyOutDir: true,
        rolldownOptions: {
          input: {
            index: 'ui/index.html',
            pairing: 'ui/pairing/index.html',
            'service-worker': 'ui/offline/service-worker.ts',
          },
          output: {
            entryFileNames: ({ name }) =>
              name === 'service-worker' ? '[name].js' : 'assets/[name]-[hash].js',
          },
        },
      },
    },
    hub: server(
      'dist/hub',
      {
        main: 'main/hub/main.ts',
        worker: 'main/work/worker.ts',
        'log-reader': 'main/store/log/beside/entry.ts',
        plan: 'main/commands/plan.ts',
        fit: 'main/commands/fit.ts',
        stickers: 'main/commands/stickers.ts',
        data: 'main/commands/data.ts',
        papers: 'main/commands/papers.ts',
      },
      'es',
    ),
    shell: server('dist/shell', { main: 'main/shell/main.ts', kiosk: 'main/kiosk/kiosk.ts' }, 'es', [
      'electron',
    ]),
    preload: server('dist/preload', { preload: 'main/shell/preload.ts' }, 'cjs', ['electron']),
  },
  builder: {
    async buildApp(builder) {
      const ended = buildBegins(builder.config.root);
      for (const name of ['client', 'hub', 'shell', 'preload']) {
        const environment = builder.environments[name];
        if (environment !== undefined) await builder.build(environment);
      }
      ended();
    },
  },
  test: {
    // As many as there are cores: on two, one alone would leave the other idle.
    maxWorkers: availableParallelism(),
    projects: [
      {
        extends: true,
        test: {
          name: 'node',
          environment: 'node',
          // No test changes what another loads: one process serves them all, in half the time.
          isolate: false,
          testTimeout: PATIENCE_MS,
          include: ['test/{core,labels,main,published,assembly}/**/*.test.ts'],
        },
      },
      {
        extends: true,
        plugins: [svelteTesting()],
        test: {
          name: 'dom',
          environment: 'jsdom',
          testTimeout: PATIENCE_MS,
          include: ['test/ui/**/*.test.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'bench',
          environment: 'node',
          include: ['test/bench/**/*.test.ts'],
          testTimeout: 3_600_000,
          fileParallelism: false,
        },
      },
      {
        extends: true,
        test: {
          name: 'proof',
          environment: 'node',
          // What proves alone, and in full what `npm test` draws fewer samples of.
          include: [
            'test/proof/**/*.test.ts',
            'test/core/job/nonsense.test.ts',
            'test/core/planning/part-as-cut.test.ts',
            'test/core/settable/tenon-faces.test.ts',
            'test/core/views/*.test.ts',
            'test/labels/stickers/stickers-pdf.test.ts',
            'test/labels/papers/card-pages.test.ts',
            'test/labels/papers/papers.test.ts',
            'test/main/store/log/mark-entry.test.ts',
            'test/assembly/allowances.test.ts',
          ],
          env: { PROOF_IN_FULL: '1' },
          testTimeout: 3_600_000,
        },
      },
    ],
  },
});
