import type { FastifyInstance } from 'fastify';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { PAIRING_PAGE } from './network-gate.ts';

/** The one page, where the build puts it. */
export const PAGE = 'ui/index.html';
const SCREENS = ['/', '/station', '/station/:id', '/board', '/office'];
/** The page by which a device is paired: anyone may have it, with what it is made of. */
const PAIRING = 'ui/pairing/index.html';

/** The built screens: their files by the names that were built, nothing else, and one page for every screen's address. */
export function screenRoutes(app: FastifyInstance, folder: string): void {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'));
  const open = madeOf(folder, files, PAIRING);
  for (const name of files)
    app.get(`/${name}`, { config: { who: open.has(name) ? 'anyone' : 'device' } }, async (_request, reply) =>
      reply.sendFile(name, {
        maxAge: name.startsWith('assets/') ? 31_536_000_000 : 0,
        immutable: name.startsWith('assets/'),
      }),
    );
  app.get(PAIRING_PAGE, { config: { who: 'anyone' } }, async (_request, reply) =>
    reply.sendFile(PAIRING, { maxAge: 0 }),
  );
  for (const address of SCREENS)
    app.get(address, async (_request, reply) => reply.sendFile(PAGE, { maxAge: 0 }));
}

/** The assets that a page is made of: those that it names, and those that they name in turn. */
function madeOf(folder: string, files: readonly string[], page: string): ReadonlySet<string> {
  const assets = files.filter((name) => name.startsWith('assets/') && !name.endsWith('.map'));
  const found = new Set<string>();
  const look = (name: string) => {
    if (!/\.(html|js|css)$/.test(name)) return;
    const text = readFileSync(join(folder, name), 'utf8');
    for (const each of assets)
      if (!found.has(each) && text.includes(each.slice('assets/'.length))) {
        found.add(each);
        look(each);
      }
  };
  if (files.includes(page)) look(page);
  return found;
}
