import 'reflect-metadata';
import * as x509 from '@peculiar/x509';
import { createHash, randomBytes, X509Certificate } from 'node:crypto';
import { isIPv4 } from 'node:net';
import { NAME_CONSTRAINTS_ID, nameConstraints } from './name-constraints.ts';

/** A certificate and its key, both as PEM. */
export interface CertifiedKey {
  readonly certificate: string;
  readonly key: string;
}

const DAY_MS = 86_400_000;
const AUTHORITY_DAYS = 3650;
/** Browsers refuse a longer one from a public authority (CA/Browser Forum baseline requirements, from memory); ours keeps to it too. */
export const LEAF_DAYS = 397;
/** Clocks of a shop's machines differ. */
const EARLIER_MS = DAY_MS;
const EC_P256 = { name: 'ECDSA', namedCurve: 'P-256' };
const SIGNED_BY = { name: 'ECDSA', hash: 'SHA-256' };

/** A new authority for one shop, for ten years: it can vouch for machines in private networks and .local names alone, and for no other authority. */
export async function makeAuthority(shop: string, now: number): Promise<CertifiedKey> {
  const keys = await newKeys();
  const certificate = await x509.X509CertificateGenerator.createSelfSigned(
    {
      serialNumber: serial(),
      name: [{ CN: [`Shoulderline ${shop}`] }],
      notBefore: new Date(now - EARLIER_MS),
      notAfter: new Date(now + AUTHORITY_DAYS * DAY_MS),
      signingAlgorithm: SIGNED_BY,
      keys,
      extensions: [
        new x509.BasicConstraintsExtension(true, 0, true),
        new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign, true),
        new x509.Extension(NAME_CONSTRAINTS_ID, true, nameConstraints()),
        await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
      ],
    },
    crypto,
  );
  return { certificate: certificate.toString('pem'), key: await keyText(keys.privateKey) };
}

/** A certificate of the hub for these addresses and names, by the shop's authority, for 397 days. */
export async function makeLeaf(
  authority: CertifiedKey,
  names: readonly string[],
  now: number,
): Promise<CertifiedKey> {
  const issuer = new x509.X509Certificate(authority.certificate);
  const keys = await newKeys();
  const certificate = await x509.X509CertificateGenerator.create(
    {
      serialNumber: serial(),
      subject: [{ CN: ['Shoulderline'] }],
      issuer: issuer.subjectName,
      notBefore: new Date(now - EARLIER_MS),
      notAfter: new Date(now - EARLIER_MS + LEAF_DAYS * DAY_MS),
      signingAlgorithm: SIGNED_BY,
      publicKey: keys.publicKey,
      signingKey: await signingKey(authority.key),
      extensions: [
        new x509.BasicConstraintsExtension(false, undefined, true),
        new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
        new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
        new x509.SubjectAlternativeNameExtension(
          names.map((value) => ({ type: isIPv4(value) ? ('ip' as const) : ('dns' as const), value })),
        ),
        await x509.AuthorityKeyIdentifierExtension.create(issuer.publicKey),
        await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
      ],
    },
    crypto,
  );
  return { certificate: certificate.toString('pem'), key: await keyText(keys.privateKey) };
}

/** Does this certificate still stand, so long from now, for just these addresses and names? */
export function standsFor(pem: string, names: readonly string[], now: number, ahead: number): boolean {
  const { subjectAltName = '', validFrom, validTo } = new X509Certificate(pem);
  const said = subjectAltName.split(', ').map((each) => each.replace(/^(DNS|IP Address):/, ''));
  const same = said.length === names.length && names.every((name) => said.includes(name));
  return same && now >= Date.parse(validFrom) && now + ahead <= Date.parse(validTo);
}

/** A certificate's bytes, from its PEM. */
export function derOf(pem: string): Buffer {
  return new X509Certificate(pem).raw;
}

/** By what a person can tell a certificate: SHA-256 of its bytes, in pairs of hexadecimal digits. */
export function fingerprintOf(pem: string): string {
  const pairs = createHash('sha256').update(derOf(pem)).digest('hex').toUpperCase().match(/../g);
  return (pairs ?? []).join(':');
}

function newKeys() {
  return crypto.subtle.generateKey(EC_P256, true, ['sign', 'verify']);
}

/** Sixteen random bytes, not negative and not beginning with nothing, so that they are written in their shortest form. */
function serial(): string {
  const bytes = randomBytes(16);
  bytes[0] = ((bytes[0] ?? 0) & 0x7f) | 0x40;
  return bytes.toString('hex');
}

type Key = Parameters<typeof crypto.subtle.exportKey>[1];

async function keyText(key: Key): Promise<string> {
  return x509.PemConverter.encode(await crypto.subtle.exportKey('pkcs8', key), 'PRIVATE KEY');
}

function signingKey(pem: string): Promise<Key> {
  const [bytes] = x509.PemConverter.decode(pem);
  if (bytes === undefined) throw new Error('there is no key in the file of the shop’s authority');
  return crypto.subtle.importKey('pkcs8', bytes, EC_P256, false, ['sign']);
}
