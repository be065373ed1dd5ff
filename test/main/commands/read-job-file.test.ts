import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readJsonFile } from '#main/commands/read-job-file.ts';
import { freshFolder } from '../store/fresh-folder.ts';

function read(bytes: Buffer) {
  const path = join(freshFolder(), 'job.json');
  writeFileSync(path, bytes);
  const file = readJsonFile(path);
  return file.ok ? file.value : file.faults.map(({ code }) => code);
}

test('a file in another encoding than UTF-8 is refused, so that no two names fall together', () => {
  expect(read(Buffer.from('{"job":"Müller"}', 'utf8'))).toEqual({ job: 'Müller' });
  expect(read(Buffer.from('{"job":"Müller"}', 'latin1'))).toEqual(['not-utf8']);
});

test('a byte order mark before the file is left out', () => {
  expect(read(Buffer.from('\ufeff{"job":"x"}', 'utf8'))).toEqual({ job: 'x' });
});

test('what is no JSON, too large or not there is said', () => {
  expect(read(Buffer.from('{'))).toEqual(['not-json']);
  expect(read(Buffer.alloc(8 * 1024 * 1024 + 1, ' '))).toEqual(['too-large']);
  const none = readJsonFile(join(freshFolder(), 'none.json'));
  expect(none.ok ? [] : none.faults.map(({ code }) => code)).toEqual(['unreadable']);
});
