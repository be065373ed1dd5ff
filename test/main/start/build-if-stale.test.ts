import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { BuildEnvironment, ViteBuilder } from 'vite';
import { buildBegins, buildIfStale, isBuilt } from '#main/start/build-if-stale.mjs';
import config from '../../../vite.config.ts';

let root = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'shoulderline-built-'));
  mkdirSync(join(root, 'core'));
  writeFileSync(join(root, 'core', 'part.ts'), 'export const part = 1;\n');
  writeFileSync(join(root, 'package.json'), '{}\n');
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

/** Builds as `vite build --app` does, with `build` in place of what bundles one environment. */
async function buildApp(build: () => void): Promise<readonly string[]> {
  const built: string[] = [];
  const named = Object.keys(config.environments ?? {}).map((name) => [name, { name }]);
  await config.builder?.buildApp?.({
    config: { root },
    environments: Object.fromEntries(named) as Record<string, BuildEnvironment>,
    build: (environment: BuildEnvironment) => {
      built.push(environment.name);
      build();
      return Promise.resolve([]);
    },
  } as unknown as ViteBuilder);
  return built;
}

test('what a build has made is not built again by the start, until a source changes', async () => {
  expect(isBuilt(root)).toBe(false);
  expect(await buildApp(() => undefined)).toEqual(['client', 'hub', 'shell', 'preload']);
  expect(isBuilt(root)).toBe(true);
  expect(buildIfStale(root)).toBe(true);
  writeFileSync(join(root, 'core', 'part.ts'), 'export const part = 2;\n');
  expect(isBuilt(root)).toBe(false);
});

test('a build that fails, or is cut short, leaves what is there stale', async () => {
  await buildApp(() => undefined);
  await expect(
    buildApp(() => {
      throw new Error('no room');
    }),
  ).rejects.toThrow('no room');
  expect(isBuilt(root)).toBe(false);
});

test('a source that changes while it is built leaves it stale', () => {
  const ended = buildBegins(root);
  writeFileSync(join(root, 'core', 'part.ts'), 'export const part = 3;\n');
  ended();
  expect(isBuilt(root)).toBe(false);
});
