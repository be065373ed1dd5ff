import { mkdirSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { RotatedFile } from '#main/hub/log-file.ts';
import { freshFolder } from '../store/fresh-folder.ts';

test('the program’s log is begun anew when it is full, and only so many older ones are kept', () => {
  const folder = freshFolder();
  const log = new RotatedFile(join(folder, 'hub.log'), 100, 2);
  for (let k = 0; k < 40; k += 1) log.write(`line ${String(k).padStart(2, '0')}\n`);
  expect(readdirSync(folder).sort()).toEqual(['hub.log', 'hub.log.1', 'hub.log.2']);
  for (const name of readdirSync(folder)) expect(statSync(join(folder, name)).size).toBeLessThanOrEqual(100);
  const kept = ['hub.log.2', 'hub.log.1', 'hub.log']
    .map((name) => readFileSync(join(folder, name), 'utf8'))
    .join('');
  expect(kept.trim().split('\n').at(-1)).toBe('line 39');
  expect(kept).toBe(
    Array.from(
      { length: kept.length / 8 },
      (_, k) => `line ${String(40 - kept.length / 8 + k).padStart(2, '0')}\n`,
    ).join(''),
  );
});

test('a log that cannot be written stops nothing, and goes on when it can', () => {
  const folder = freshFolder();
  const inside = join(folder, 'logs');
  const log = new RotatedFile(join(inside, 'hub.log'));
  log.write('lost\n');
  mkdirSync(inside);
  log.write('kept\n');
  expect(readFileSync(join(inside, 'hub.log'), 'utf8')).toBe('kept\n');
});
