import { X509Certificate } from 'node:crypto';
import { isIP } from 'node:net';
import { connect, type ConnectionOptions, type DetailedPeerCertificate, type TLSSocket } from 'node:tls';
import { codeOf, wordsOf } from '../../store/files/file-port.ts';

/** How long a machine that is there takes to answer. */
const PATIENCE_MS = 5000;
/** More than a leaf and its authority is no chain of ours. */
const LONGEST_CHAIN = 3;

/** A shop's authority, whose certificate was shown by whoever answers; nobody has said yet that it is to be trusted. */
export interface ShownAuthority {
  readonly certificate: string;
  readonly fingerprint: string;
}

/**
 * Who answers at an address, to one who trusts a shop's authority: the hub itself; somebody whose key that authority does not
 * vouch for; a hub whose certificate is for other addresses, or not for this day; or nobody.
 */
export type Answers = 'hub' | 'other' | 'name' | 'clock' | 'away';

/** Which options a connection to a hub needs, whoever is trusted. */
export function toHub(url: string): ConnectionOptions & { host: string; port: number } {
  const { hostname, port } = new URL(url);
  // A name is asked for by the handshake too, which an address must not be.
  return {
    host: hostname,
    port: Number(port || 443),
    ...(isIP(hostname) === 0 ? { servername: hostname } : {}),
  };
}

/** Who answers there, to one who trusts this authority. Trusts nobody else: no root of the machine's own. */
export async function whoAnswers(url: string, authority: string): Promise<Answers> {
  try {
    await shakenHands({ ...toHub(url), ca: authority }, () => undefined);
    return 'hub';
  } catch (error) {
    return toldBy(error);
  }
}

/** What an error of a connection to a hub says of who answers. */
export function toldBy(error: unknown): Exclude<Answers, 'hub'> {
  const code = codeOf(error) ?? '';
  if (code === 'ERR_TLS_CERT_ALTNAME_INVALID') return 'name';
  if (code === 'CERT_HAS_EXPIRED' || code === 'CERT_NOT_YET_VALID') return 'clock';
  return /^E(?!RR_|PROTO$)[A-Z_]+$/.test(code) ? 'away' : 'other';
}

/** The authority that vouches for whoever answers there, trusted or not; `stranger` where that is no hub, `away` where nobody answers. */
export async function shownAuthority(url: string): Promise<ShownAuthority | 'stranger' | 'away'> {
  try {
    return await shakenHands(
      { ...toHub(url), rejectUnauthorized: false },
      (socket) => authorityOf(socket) ?? 'stranger',
    );
  } catch (error) {
    return toldBy(error) === 'away' ? 'away' : 'stranger';
  }
}

/** The end of the chain that was shown, if it has signed what the other end has just proved to hold the key of. */
function authorityOf(socket: TLSSocket): ShownAuthority | null {
  const shown: Partial<DetailedPeerCertificate> = socket.getPeerCertificate(true);
  if (shown.raw === undefined) return null;
  let last = shown;
  for (
    let k = 1;
    k < LONGEST_CHAIN && last.issuerCertificate !== undefined && last.issuerCertificate !== last;
    k += 1
  )
    last = last.issuerCertificate;
  const [leaf, authority] = [new X509Certificate(shown.raw), new X509Certificate(last.raw ?? shown.raw)];
  const vouches = authority.ca && authority.verify(authority.publicKey) && leaf.verify(authority.publicKey);
  return vouches ? { certificate: authority.toString(), fingerprint: authority.fingerprint256 } : null;
}

function shakenHands<T>(options: ConnectionOptions, look: (socket: TLSSocket) => T): Promise<T> {
  return new Promise((told, failed) => {
    const socket = connect(options, () => {
      try {
        told(look(socket));
      } catch (error) {
        failed(error instanceof Error ? error : new Error(wordsOf(error)));
      }
      socket.destroy();
    });
    socket.setTimeout(PATIENCE_MS, () =>
      socket.destroy(Object.assign(new Error('no answer'), { code: 'ETIMEDOUT' })),
    );
    socket.on('error', failed);
    socket.on('close', () => failed(Object.assign(new Error('hung up'), { code: 'ECONNRESET' })));
  });
}
