import { expect, test } from 'vitest';
import { PairingOffers } from '#main/network/pairing-offers.ts';
import { PairingProof } from '#main/network/pairing-proof.ts';
import { qrSymbol } from '#main/network/qr-symbol.ts';
import { readQr } from './read-qr.ts';

const MINUTE_MS = 60_000;
const HERE = '192.168.1.21';

test('an offer is over after ten minutes, by its token and by its code', () => {
  let now = 1_000_000;
  const offers = new PairingOffers(() => now);
  for (const by of ['token', 'code'] as const) {
    const offered = offers.begin();
    expect(offered.code).toMatch(/^[0-9A-HJ-NP-X]{8}$/);
    expect(offered.token).toMatch(/^[\w-]{22}$/);
    now += 10 * MINUTE_MS + 1;
    expect(offers.take(offered[by], HERE)).toBe(false);
    const again = offers.begin();
    now += 10 * MINUTE_MS;
    expect(offers.take(again[by], HERE)).toBe(true);
    expect(offers.take(again[by], HERE)).toBe(false);
  }
});

test('wrong codes end the code, but not what was scanned; a token is taken letter by letter', () => {
  const offers = new PairingOffers();
  const { token, code } = offers.begin();
  for (let k = 0; k < 10; k += 1) expect(offers.take('00000000', HERE)).toBe(code === '00000000');
  expect(offers.take(code, HERE)).toBe(false);
  expect(offers.take(token.toLowerCase(), HERE)).toBe(token === token.toLowerCase());
  expect(offers.take('', HERE)).toBe(false);
  expect(offers.take(token, HERE)).toBe(true);
  offers.begin();
  offers.end();
  expect(offers.take(token, HERE)).toBe(false);
});

test('wrong codes of one machine end the code for that machine alone; those of a hundred end it for all', () => {
  const offers = new PairingOffers();
  const wrong = (code: string) => (code === '00000000' ? '00000001' : '00000000');
  const { code } = offers.begin();
  for (let k = 0; k < 100; k += 1) expect(offers.take(wrong(code), '192.168.1.66')).toBe(false);
  expect(offers.take(code, '192.168.1.66')).toBe(false);
  expect(offers.take(code, HERE)).toBe(true);
  const next = offers.begin();
  expect(offers.take(next.code, '192.168.1.66')).toBe(true);
  const last = offers.begin();
  for (let k = 0; k < 1000; k += 1)
    expect(offers.take(wrong(last.code), `10.0.0.${Math.floor(k / 10)}`)).toBe(false);
  expect(offers.take(last.code, HERE)).toBe(false);
  expect(offers.take(last.token, HERE)).toBe(true);
});

test('a proof is good for what was asked, for ten minutes, and for the hub that gave it', () => {
  let now = 1_000_000;
  const proofs = new PairingProof(() => now);
  const ask = proofs.ask();
  const proof = /'([\w-]{43})'/.exec(proofs.script(ask) ?? '')?.[1] ?? '';
  expect(proofs.holds(ask, proof)).toBe(true);
  expect(proofs.holds(proofs.ask(), proof)).toBe(false);
  expect(proofs.holds(ask, '')).toBe(false);
  expect(new PairingProof(() => now).holds(ask, proof)).toBe(false);
  expect(proofs.script("1.'); alert('")).toBeNull();
  expect(proofs.script(`${now + 100 * MINUTE_MS}.${ask.slice(-16)}`)).toBeNull();
  now += 10 * MINUTE_MS + 1;
  expect(proofs.holds(ask, proof)).toBe(false);
  expect(proofs.script(ask)).toBeNull();
});

test('a decoder reads of a QR code the address that it stands for', async () => {
  for (const text of [
    'http://192.168.1.20:7519',
    'https://192.168.1.20:7518/pairing#AAAAAAAAAAAAAAAAAAAAAA',
    'https://172.16.100.200:65535/pairing#__--__--__--__--__--__',
  ])
    expect(await readQr(qrSymbol(text))).toBe(text);
});
