import { createPrivateKey, X509Certificate } from 'node:crypto';
import { join } from 'node:path';
import { z } from 'zod';
import type { NetworkPart } from '../store/archive/network-part.ts';
import type { FilePort } from '../store/files/file-port.ts';
import { DEVICE_WAYS_NAME, DEVICES_NAME, NETWORK_KEYS_NAME } from '../store/files/folder-names.ts';
import { unsealed } from '../store/files/seal.ts';
import type { CertifiedKey } from './certificates.ts';
import { readDevices } from './device-store.ts';
import { NO_WAYS, readWays } from './device-ways.ts';
import { readKeys } from './kept-keys.ts';

const partSchema = z.strictObject({ keys: z.unknown(), devices: z.unknown(), ways: z.unknown().optional() });

/** The network's keys and devices as they lie in a data folder; null where it was never switched on. */
export async function networkPart(port: FilePort, data: string): Promise<NetworkPart | null> {
  const [keys, devices, ways] = [
    await port.read(join(data, NETWORK_KEYS_NAME)),
    await port.read(join(data, DEVICES_NAME)),
    await port.read(join(data, DEVICE_WAYS_NAME)),
  ];
  if (keys === null) return null;
  const found = readKeys(unsealed(keys.toString('utf8')));
  if (found.authority === null) return null;
  return {
    keys: found,
    devices: devices === null ? { format: 1, devices: [] } : readDevices(unsealed(devices.toString('utf8'))),
    ways: ways === null ? NO_WAYS : readWays(unsealed(ways.toString('utf8'))),
  };
}

/** What an archive holds of the network; throws where a key does not belong to its certificate, or the hub's is not by the shop's authority. */
export function readNetworkPart(part: unknown): NetworkPart {
  const given = partSchema.parse(part);
  const keys = readKeys(JSON.stringify(given.keys));
  const devices = readDevices(JSON.stringify(given.devices));
  const ways = given.ways === undefined ? NO_WAYS : readWays(JSON.stringify(given.ways));
  const { authority, leaf } = keys;
  if (authority === null) throw new Error('it holds no key of the shop’s authority');
  const shop = belongs(authority);
  if (!shop.ca || !shop.verify(shop.publicKey)) throw new Error('that is no certificate of a shop');
  if (leaf !== null && !belongs(leaf).verify(shop.publicKey))
    throw new Error('the hub’s certificate is not by the shop’s authority');
  return { keys, devices, ways };
}

function belongs({ certificate, key }: CertifiedKey): X509Certificate {
  const read = new X509Certificate(certificate);
  if (!read.checkPrivateKey(createPrivateKey(key)))
    throw new Error('a key of the network does not belong to its certificate');
  return read;
}
