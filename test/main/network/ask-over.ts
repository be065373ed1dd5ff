import { connect } from 'node:http2';
import { request } from 'node:https';

/** What was answered over the network. */
export interface Over {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
  readonly body: Record<string, unknown>;
}

export interface Said {
  /** A text goes as it is. */
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
}

function textOf(said: Said): string | undefined {
  if (said.body === undefined) return undefined;
  return typeof said.body === 'string' ? said.body : JSON.stringify(said.body);
}

function read(type: unknown, text: string): Record<string, unknown> {
  return String(type).startsWith('application/json') && text !== ''
    ? (JSON.parse(text) as Record<string, unknown>)
    : { text };
}

/** Asks over HTTP/1.1. */
export function askOver(
  url: string,
  ca: string,
  method: string,
  path: string,
  said: Said = {},
): Promise<Over> {
  const text = textOf(said);
  const { hostname, port } = new URL(url);
  return new Promise((told, failed) => {
    const asked = request(
      {
        hostname,
        port,
        method,
        path,
        ca,
        agent: false,
        // Where another host is asked for, the certificate is still the shop's.
        ...(said.headers?.host === undefined ? {} : { checkServerIdentity: () => undefined }),
        headers: { ...(text === undefined ? {} : { 'content-type': 'application/json' }), ...said.headers },
      },
      (answer) => {
        const pieces: Buffer[] = [];
        answer.on('data', (piece: Buffer) => pieces.push(piece));
        answer.on('error', failed);
        answer.on('end', () =>
          told({
            status: answer.statusCode ?? 0,
            headers: answer.headers,
            body: read(answer.headers['content-type'], Buffer.concat(pieces).toString()),
          }),
        );
      },
    );
    asked.on('error', failed);
    asked.end(text);
  });
}

/** Asks over HTTP/2, by a connection of its own. */
export function askOverTwo(
  url: string,
  ca: string,
  method: string,
  path: string,
  said: Said = {},
): Promise<Over> {
  const text = textOf(said);
  const session = connect(url, { ca });
  return new Promise<Over>((told, failed) => {
    session.on('error', failed);
    const asked = session.request({
      ':method': method,
      ':path': path,
      ...(text === undefined ? {} : { 'content-type': 'application/json' }),
      ...said.headers,
    });
    let status = 0;
    let headers: Over['headers'] = {};
    const pieces: Buffer[] = [];
    asked.on('response', (answer) => {
      status = answer[':status'] ?? 0;
      headers = answer;
    });
    asked.on('data', (piece: Buffer) => pieces.push(piece));
    asked.on('error', failed);
    asked.on('end', () =>
      told({ status, headers, body: read(headers['content-type'], Buffer.concat(pieces).toString()) }),
    );
    asked.end(text);
  }).finally(() => session.close());
}
