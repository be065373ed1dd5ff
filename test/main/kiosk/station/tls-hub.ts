import { createSecureServer, type Http2SecureServer } from 'node:http2';
import { onTestFinished } from 'vitest';
import type { CertifiedKey } from '#main/network/certificates.ts';

/** What answers over TLS at an address of this machine's own, as a hub does: the chain that is shown, and "in" as its page. */
export interface TlsHub {
  readonly url: string;
  /** So many requests it was asked. */
  readonly asked: () => number;
  stop(): Promise<void>;
}

/** `behind` stands behind the leaf in what is shown. */
export async function tlsHub(leaf: CertifiedKey, behind: string, port = 0): Promise<TlsHub> {
  let asked = 0;
  const server: Http2SecureServer = createSecureServer(
    { key: leaf.key, cert: `${leaf.certificate}\n${behind}`, allowHTTP1: true },
    (_request, answer) => {
      asked += 1;
      answer.end('in');
    },
  );
  const sockets = new Set<{ destroy(): void }>();
  server.on('connection', (socket: { destroy(): void }) => sockets.add(socket));
  server.on('tlsClientError', () => undefined);
  server.on('sessionError', () => undefined);
  await new Promise<void>((listening) => server.listen(port, '127.0.0.2', listening));
  const address = server.address();
  const taken = typeof address === 'object' && address !== null ? address.port : 0;
  const stop = async () => {
    for (const socket of sockets) socket.destroy();
    await new Promise<void>((over) => server.close(() => over()));
  };
  onTestFinished(() => stop().catch(() => undefined));
  return { url: `https://127.0.0.2:${taken}`, asked: () => asked, stop };
}
