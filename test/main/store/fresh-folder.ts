import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder for this test alone; gone when it has finished. */
export function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'shoulderline-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
