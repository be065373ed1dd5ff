import { svelte } from '@sveltejs/vite-plugin-svelte';
import { svelteTesting } from '@testing-library/svelte/vite';
import { builtinModules } from 'node:module';
import { defineConfig } from 'vitest/config';

const external = [...builtinModules, /^node:/, 'electron'];

export default defineConfig({
  root: import.meta.dirname,
  plugins: [svelte()],
  test: {
    projects: [
      {
        extends: true,
        test: { name: 'node', environment: 'node', include: ['test/{core,labels,main,published,assembly}/**/*.test.ts'] },
      },
      {
        extends: true,
        plugins: [svelteTesting()],
        test: { name: 'dom', environment: 'jsdom', include: ['test/ui/**/*.test.ts'] },
      },
    ],
  },
  environments: {
    client: { build: { outDir: 'dist/ui', rollupOptions: { input: 'ui/index.html' } } },
    hub: { build: { outDir: 'dist/hub', rollupOptions: { external } } },
  },
});
