import fc from 'fast-check';
import { request } from 'node:http';

/** A request that no screen would send. */
export interface Hostile {
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string;
}

const nasty = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.constantFrom(
    '',
    '.',
    '..',
    '../../etc/passwd',
    '..%2f..%2fpin.json',
    '%00',
    '%',
    '%zz',
    '%c0%ae%c0%ae',
    '__proto__',
    'constructor',
    '<img src=x onerror=alert(1)>',
    "'; DROP TABLE marks; --",
    '=HYPERLINK("http://example.org")',
    '%PDF-1.7 1 0 obj',
    'A'.repeat(5000),
    '\u202e\u0000\ud800',
  ),
);
const known = fc.constantFrom(
  'health',
  'jobs',
  'jobs/boot-room',
  'jobs/boot-room/file',
  'jobs/boot-room/measured',
  'jobs/boot-room/printed',
  'jobs/boot-room/progress',
  'jobs/boot-room/stickers.pdf',
  'parts/803AX3UERH',
  'marks',
  'board',
  'shop',
  'session',
  'backups/x/restore',
  'import',
);
const path = fc.oneof(
  nasty.map((text) => `/api/${encodeURIComponent(wellFormed(text))}`),
  nasty.map((text) => `/${raw(text)}`),
  fc.tuple(known, nasty).map(([address, text]) => `/api/${address}/${encodeURIComponent(wellFormed(text))}`),
  fc
    .tuple(known, nasty)
    .map(([address, text]) => `/api/${address}?stock=${raw(text)}&codes=${raw(text)}&from=${raw(text)}`),
  known.map((address) => `/api/${address}`),
);
const deep = fc
  .integer({ min: 1, max: 3000 })
  .map((depth) => `${'{"a":['.repeat(depth)}1${']}'.repeat(depth)}`);
const mark = fc
  .record({
    id: fc.oneof(fc.uuid(), nasty),
    code: nasty,
    station: fc.oneof(fc.constantFrom('milling', 'bench'), nasty),
    stage: fc.oneof(fc.constantFrom('mill', 'bead'), nasty),
    mark: fc.oneof(fc.constantFrom('done', 'undo', 'spoiled', 'proved'), nasty),
    at: fc.oneof(fc.constant('2026-11-25T08:00:00Z'), nasty),
    by: nasty,
  })
  .map((value) => JSON.stringify(value));
const job = fc
  .record({
    format: fc.oneof(fc.constant(1), fc.double()),
    job: nasty,
    units: fc.oneof(fc.constantFrom('in', 'mm'), nasty),
    doors: fc.array(
      fc.record({
        mark: nasty,
        quantity: fc.oneof(fc.integer(), fc.double()),
        opening: fc.record({ width: fc.oneof(nasty, fc.double()), height: nasty }),
        wrong: fc.anything(),
      }),
      { maxLength: 3 },
    ),
  })
  .map((value) =>
    JSON.stringify(value, (_key, each: unknown) => (typeof each === 'bigint' ? String(each) : each)),
  );
const body = fc.oneof(
  nasty,
  fc.json(),
  deep,
  mark,
  job,
  fc.constantFrom('{"__proto__":{"pin":null}}', '{"constructor":{"prototype":{}}}', '[', '\u0000', '1e999'),
);
/** Wrong in one request of ten, so that most are let in and meet what lies behind. */
const seldom = (...values: readonly string[]) =>
  fc.oneof(
    { weight: 9, arbitrary: fc.constant(undefined) },
    { weight: 1, arbitrary: fc.constantFrom(...values) },
  );
const headers = fc
  .record({
    'content-type': fc.oneof(
      { weight: 4, arbitrary: fc.constantFrom('application/json', 'application/json; charset=utf-8') },
      {
        weight: 1,
        arbitrary: fc.constantFrom(
          'text/plain',
          'multipart/form-data; boundary=x',
          'application/x-www-form-urlencoded',
          '',
        ),
      },
    ),
    origin: seldom('http://example.org', 'null', 'file://'),
    host: seldom('example.org', '127.0.0.1', '169.254.169.254', 'localhost:1'),
    cookie: fc.option(nasty.map(printable), { nil: undefined }),
    'last-event-id': fc.option(nasty.map(printable), { nil: undefined }),
    'transfer-encoding': seldom('chunked'),
    accept: fc.option(nasty.map(printable), { nil: undefined }),
  })
  .map((all) =>
    Object.fromEntries(
      Object.entries(all).flatMap(([name, value]): [string, string][] =>
        value === undefined ? [] : [[name, value]],
      ),
    ),
  );

/** What anybody may take away: with nothing wrong about it, that is no hostile request. */
const MAY_GO = /^\/api\/(session|jobs\/boot-room)\/?(\?|$)/;

/** Requests with wrong bodies, paths, headers, codes and methods. `GET /events` is not asked: it never ends. */
export const hostile: fc.Arbitrary<Hostile> = fc
  .record({
    method: fc.constantFrom('GET', 'POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS', 'HEAD', 'TRACE', 'PROPFIND'),
    path,
    headers,
    body,
  })
  .filter(({ method, path: address }) => method !== 'DELETE' || !MAY_GO.test(address));

/** Answers with its status, or with 0 when the connection was closed on what is no HTTP. */
export function send(
  url: string,
  { method, path: address, headers: head, body: text }: Hostile,
): Promise<number> {
  const { hostname, port, host } = new URL(url);
  const bodiless = method === 'GET' || method === 'HEAD' || method === 'TRACE' || method === 'OPTIONS';
  return new Promise((told) => {
    const asked = request(
      { hostname, port, method, path: address, headers: { host, ...head }, agent: false, timeout: 10_000 },
      (response) => {
        response.resume();
        response.on('end', () => told(response.statusCode ?? 0));
        response.on('error', () => told(response.statusCode ?? 0));
      },
    );
    asked.on('error', () => told(0));
    asked.on('timeout', () => asked.destroy());
    asked.end(bodiless ? undefined : text);
  });
}

/** Is it a request that may be answered with 2xx: reading what is there, with nothing wrong about it? */
export function harmless({ method, headers: head }: Hostile): boolean {
  return method === 'GET' && head.origin === undefined && head.host === undefined;
}

/** Without halves of characters, which no address can carry. */
function wellFormed(text: string): string {
  return Buffer.from(text, 'utf8').toString('utf8');
}

/** Characters that may stand in a request's first line, others as they are written there. */
function raw(text: string): string {
  return wellFormed(text).replace(/[^!-~]/gu, (one) => encodeURIComponent(one));
}

function printable(text: string): string {
  return text.replace(/[^ -~]/g, '?').slice(0, 200);
}
