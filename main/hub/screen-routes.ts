import type { FastifyInstance } from 'fastify';
import { readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

/** The one page, where the build puts it. */
const PAGE = 'ui/index.html';
const SCREENS = ['/', '/station', '/station/:id', '/board', '/office'];

/** The built screens: their files by the names that were built, nothing else, and one page for every screen's address. */
export function screenRoutes(app: FastifyInstance, folder: string): void {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'));
  for (const name of files)
    app.get(`/${name}`, async (_request, reply) =>
      reply.sendFile(name, {
        maxAge: name.startsWith('assets/') ? 31_536_000_000 : 0,
        immutable: name.startsWith('assets/'),
      }),
    );
  for (const address of SCREENS)
    app.get(address, async (_request, reply) => reply.sendFile(PAGE, { maxAge: 0 }));
}
