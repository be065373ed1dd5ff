import { isPrivate } from './private-address.ts';

const LABEL = '[a-z\\d]([a-z\\d-]{0,61}[a-z\\d])?';
const NAME = new RegExp(`^${LABEL}\\.local$`);
const WRITTEN = /^(?:https:\/\/)?([a-z\d.-]{1,70})(?::(\d{1,5}))?(?:[/?#].*)?$/;

/**
 * Where a hub is got, "https://192.168.1.20:7518", from what was typed or scanned: an address or a .local name, with or
 * without the port; without one it is `port`. Null for whatever the certificate of a shop cannot stand for.
 */
export function readHubOrigin(text: string, port: string): string | null {
  const [, host = '', said = port] = WRITTEN.exec(text.trim().toLowerCase()) ?? [];
  if (!isPrivate(host) && !NAME.test(host)) return null;
  const number = said === '' ? 443 : Number(said);
  if (number < 1 || number > 65_535) return null;
  return number === 443 ? `https://${host}` : `https://${host}:${number}`;
}
