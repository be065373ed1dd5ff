import { createHash, X509Certificate } from 'node:crypto';
import { type AddressInfo, createServer, type Socket } from 'node:net';
import { pipeline } from 'node:stream';
import { connect, createSecureContext, TLSSocket } from 'node:tls';
import { type Answers, toHub, toldBy } from './shown-certificate.ts';

/** More than one browser's connections are not taken. */
const MOST_CONNECTIONS = 64;
const PATIENCE_MS = 10_000;
/** A hub that has gone without a word is noticed by the connection itself. */
const ALIVE_MS = 10_000;

/** A way for a browser of this machine to one hub, and to nobody else. */
export interface Bridge {
  /** What a browser is started with, so that it goes this way. */
  readonly flags: readonly string[];
  /** From now on this authority is trusted, and no other. Connections that were made before are ended. */
  trust(authority: string): void;
  close(): void;
}

/**
 * Takes a browser's connections to the hub at this machine, under a key that is made now and thrown away at the end, and
 * hands them on over a connection of its own that only whoever the trusted authority vouches for can answer, for this very
 * address. Why not tell the browser the authority's key: `--ignore-certificate-errors-spki-list` is content where a key stands
 * anywhere in the chain that is shown. Whoever shows a key of their own and the shop's certificate behind it, which everybody
 * may read, would be trusted. `failed` hears why a connection could not be handed on.
 */
export async function openBridge(
  url: string,
  failed: (why: Exclude<Answers, 'hub'>) => void,
): Promise<Bridge> {
  const hub = toHub(url);
  // It takes a fifth of a second to load, which a machine that shows its own hub never spends.
  const { makeAuthority, makeLeaf } = await import('../../network/certificates.ts');
  const own = await makeLeaf(await makeAuthority('station', Date.now()), [hub.host], Date.now());
  const secureContext = createSecureContext({ cert: own.certificate, key: own.key });
  const sockets = new Set<Socket>();
  let ca: string | null = null;
  const keep = <S extends Socket>(socket: S): S => {
    sockets.add(socket);
    socket.once('close', () => sockets.delete(socket));
    return socket;
  };
  const server = createServer((from) => {
    keep(from).on('error', () => undefined);
    if (ca === null) return void from.destroy();
    const to = keep(connect({ ...hub, ca, ALPNProtocols: ['h2', 'http/1.1'] }));
    from.once('close', () => to.destroy());
    to.setTimeout(PATIENCE_MS, () =>
      to.destroy(Object.assign(new Error('no answer'), { code: 'ETIMEDOUT' })),
    );
    to.once('error', (error) => {
      from.destroy();
      failed(toldBy(error));
    });
    to.once('secureConnect', () => {
      to.setTimeout(0);
      to.setKeepAlive(true, ALIVE_MS);
      // Both ends speak what the hub has chosen.
      const spoken = typeof to.alpnProtocol === 'string' ? [to.alpnProtocol] : [];
      const near = new TLSSocket(from, { isServer: true, secureContext, ALPNProtocols: spoken });
      pipeline(near, to, near, () => void from.destroy());
    });
  });
  server.maxConnections = MOST_CONNECTIONS;
  await new Promise<void>((listening, refused) => {
    server.once('error', refused);
    server.listen(0, '127.0.0.1', listening);
  });
  const { port } = server.address() as AddressInfo;
  const end = () => {
    for (const socket of sockets) socket.destroy();
  };
  return {
    flags: [
      `--ignore-certificate-errors-spki-list=${keyOf(own.certificate)}`,
      // This machine's own pages are at 127.0.0.1; nothing else is there for this browser.
      `--host-resolver-rules=MAP ${hub.host}:${hub.port} 127.0.0.1:${port},MAP * ~NOTFOUND,EXCLUDE 127.0.0.1`,
      '--no-proxy-server',
    ],
    trust(authority) {
      if (authority === ca) return;
      ca = authority;
      end();
    },
    close() {
      server.close();
      end();
    },
  };
}

/** SHA-256 of a certificate's public key, as browsers name it. */
function keyOf(pem: string): string {
  const key = new X509Certificate(pem).publicKey.export({ type: 'spki', format: 'der' });
  return createHash('sha256').update(key).digest('base64');
}
