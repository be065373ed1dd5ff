import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const root = join(import.meta.dirname, '../../..');
const ASK = `
  import { resolveConfig } from 'vite';
  const { env, isProduction } = await resolveConfig({ root: process.cwd() }, 'build', 'production', 'production');
  process.stdout.write(JSON.stringify({ PROD: env.PROD, isProduction }));
`;

// Not so, the screens keep no page: a station that is switched on while the hub is away shows nothing.
test.each(['test', 'development', undefined])(
  'with NODE_ENV %s around, what is built is what a shop works with',
  (NODE_ENV) => {
    const { stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', ASK], {
      cwd: root,
      encoding: 'utf8',
      env: { ...process.env, NODE_ENV },
    });
    expect(JSON.parse(stdout || stderr)).toEqual({ PROD: true, isProduction: true });
  },
);
