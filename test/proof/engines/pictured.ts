import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { blueDots } from './blue-dots.ts';
import type { Engine } from './engine.ts';

const PICTURES = join(import.meta.dirname, '..', '..', '..', 'test-results', 'engines');

/** Keeps a picture to be looked at, when asked to: KEEP_SCREENS=1. */
export function keptPicture(name: string, picture: Uint8Array): void {
  if (process.env.KEEP_SCREENS === undefined) return;
  mkdirSync(PICTURES, { recursive: true });
  writeFileSync(join(PICTURES, `${name}.png`), picture);
}

/** Looks at the page as it is drawn. No screen of ours shows a blue, as a browser's own fields and bars do. */
export async function pictured(engine: Engine, name: string): Promise<void> {
  const picture = Buffer.from(await engine.picture());
  keptPicture(name, picture);
  expect(blueDots(picture), `dots of ${name} in blue`).toBe(0);
}
