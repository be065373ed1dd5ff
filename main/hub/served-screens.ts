import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { SCREENS_NAMED } from '#core/api/screens-named.ts';
import { PAGE } from './screen-routes.ts';

/** Which build the screens in a folder are of, as their page says it; undefined where there are none, or where it says nothing. */
export function servedScreens(folder: string | undefined): string | undefined {
  const page = folder === undefined ? '' : join(folder, PAGE);
  if (page === '' || !existsSync(page)) return undefined;
  return SCREENS_NAMED.exec(readFileSync(page, 'utf8'))?.[1];
}
