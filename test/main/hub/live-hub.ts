import { mkdtempSync, rmSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pino from 'pino';
import { onTestFinished } from 'vitest';
import { type Hub, type HubOptions, startHub } from '#main/hub/hub.ts';

export interface Answer {
  readonly status: number;
  readonly headers: Headers;
  readonly body: Record<string, unknown>;
}

/** A hub in this process, on a folder of its own, gone when the test has finished. */
export interface LiveHub {
  readonly data: string;
  readonly hub: Hub;
  readonly ask: (
    method: string,
    path: string,
    body?: unknown,
    headers?: Record<string, string>,
  ) => Promise<Answer>;
  /** Starts it on its folder; refused while another hub is there. */
  readonly start: (more?: Partial<HubOptions>) => Promise<void>;
  readonly restart: () => Promise<void>;
}

export async function liveHub(options: Partial<HubOptions> = {}): Promise<LiveHub> {
  const data = mkdtempSync(join(tmpdir(), 'shoulderline-hub-'));
  const open = (more: Partial<HubOptions> = {}) =>
    startHub({
      data,
      port: 0,
      host: '127.0.0.1',
      demo: false,
      version: 'test',
      logger: pino({ level: 'silent' }),
      ...options,
      ...more,
    });
  let hub = await open();
  onTestFinished(async () => {
    await hub.stop();
    rmSync(data, { recursive: true, force: true });
  });
  const start = async (more?: Partial<HubOptions>) => {
    hub = await open(more);
  };
  return {
    data,
    get hub() {
      return hub;
    },
    async ask(method, path, body, headers = {}) {
      const response = await fetch(`${hub.url}/api${path}`, {
        method,
        headers: { ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers },
        ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
      });
      const text = await response.text();
      const json = response.headers.get('content-type')?.startsWith('application/json') === true;
      return {
        status: response.status,
        headers: response.headers,
        body: json && text !== '' ? (JSON.parse(text) as Record<string, unknown>) : { text },
      };
    },
    start,
    async restart() {
      await hub.stop();
      await start();
    },
  };
}

/** Asks with exactly these headers and this path, whatever a browser would make of them; gives the status. */
export function rawStatus(
  url: string,
  path: string,
  headers: Readonly<Record<string, string>> = {},
  method = 'GET',
  body = '',
): Promise<number> {
  const { hostname, port } = new URL(url);
  return new Promise((told, failed) => {
    const asked = request({ hostname, port, path, method, headers }, (response) => {
      response.resume();
      response.on('end', () => told(response.statusCode ?? 0));
    });
    asked.on('error', failed);
    asked.end(body);
  });
}
