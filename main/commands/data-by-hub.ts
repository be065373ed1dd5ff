import { Readable } from 'node:stream';
import type { z } from 'zod';
import { refusal } from '#core/api/marks-api.ts';
import { backupMade, backupsAnswer, restoredAnswer } from '#core/api/office-api.ts';
import { DataFault, type DataWork } from './data-work.ts';

/** Has the work done by the hub that holds the data folder, at its address on this machine. */
export function dataByHub(url: string): DataWork {
  const ask = async (
    method: 'GET' | 'POST',
    path: string,
    body?: string | ReadableStream,
  ): Promise<Response> => {
    let response: Response;
    try {
      response = await fetch(`${url}/api${path}`, {
        method,
        ...(body === undefined
          ? {}
          : { body, duplex: 'half', headers: { 'content-type': 'application/json' } }),
      });
    } catch {
      throw new DataFault(
        `the data folder is in use, but no hub answers at ${url}: set SHOULDERLINE_PORT as the hub has it, or stop what uses the folder`,
      );
    }
    if (response.ok) return response;
    const told = refusal.safeParse(await response.json().catch(() => null));
    const said = told.success ? told.data.message : `the hub answered ${response.status}`;
    throw new DataFault(
      response.status === 401
        ? `${said} Do it in the office of the running hub, or stop the hub first.`
        : said,
    );
  };
  const read = async <S extends z.ZodType>(schema: S, response: Promise<Response>): Promise<z.infer<S>> =>
    schema.parse(await (await response).json());
  return {
    list: async () => (await read(backupsAnswer, ask('GET', '/backups'))).backups,
    backup: () => read(backupMade, ask('POST', '/backups', '{}')),
    restore: (name) =>
      read(restoredAnswer, ask('POST', `/backups/${encodeURIComponent(name)}/restore`, '{}')),
    async everything(withNetworkKeys) {
      const { body } = await ask('GET', withNetworkKeys ? '/export/with-network-keys' : '/export');
      if (body === null) throw new DataFault('the hub gave nothing');
      return body;
    },
    take: (_from, bytes) =>
      read(restoredAnswer, ask('POST', '/import', Readable.toWeb(Readable.from(bytes)) as ReadableStream)),
    close: async () => undefined,
  };
}
