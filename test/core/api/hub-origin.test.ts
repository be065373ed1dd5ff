import { expect, test } from 'vitest';
import { readHubOrigin } from '#core/api/hub-origin.ts';
import { isPrivate } from '#core/api/private-address.ts';

test('an address of a private network is told from every other, and from what is none', () => {
  const told = ['172.15.255.255', '172.16.0.0', '172.31.255.255', '172.32.0.0', '0.0.0.0', 'bench.local'];
  expect(told.map(isPrivate)).toEqual([false, true, true, false, false, false]);
  expect(['10.0.0.256', '10.0.0', '10.0.0.01', '10.0.0.1.', ' 10.0.0.1'].map(isPrivate)).toEqual(
    Array.from({ length: 5 }, () => false),
  );
});

test('where a hub is got is read from what is typed or scanned, by the port of the page where none is said', () => {
  const read = (text: string) => readHubOrigin(text, '7518');
  expect(read('192.168.1.20')).toBe('https://192.168.1.20:7518');
  expect(read(' 192.168.1.20:7600 ')).toBe('https://192.168.1.20:7600');
  expect(read('https://10.0.0.4:7518/pairing')).toBe('https://10.0.0.4:7518');
  expect(read('HTTPS://Planer-PC.local:7518/pairing#here')).toBe('https://planer-pc.local:7518');
  expect(read('https://10.0.0.4:443')).toBe('https://10.0.0.4');
  expect(readHubOrigin('10.0.0.4', '')).toBe('https://10.0.0.4');
});

test('what the certificate of a shop cannot stand for is no address of a hub', () => {
  for (const text of [
    'elsewhere.example',
    'https://elsewhere.example:7518',
    '8.8.8.8',
    'http://192.168.1.20:7519',
    'https://me@192.168.1.20',
    'https://elsewhere.example#192.168.1.20',
    'https://elsewhere.example/planer-pc.local',
    'a.b.local',
    '-bench.local',
    '192.168.1.20:0',
    '192.168.1.20:65536',
    '2E9KD7Q3H5',
    '',
  ])
    expect(readHubOrigin(text, '7518'), text).toBeNull();
});
