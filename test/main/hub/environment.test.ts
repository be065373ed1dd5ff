import { expect, test } from 'vitest';
import { readEnvironment } from '#main/hub/environment.ts';

test('with nothing said the office chooses the network, at this machine’s own addresses and the usual ports', () => {
  const read = readEnvironment({});
  expect(read.ok && read.value.network).toEqual({ on: null, hosts: null, port: 7518, trustPort: 7519 });
  expect(read.ok && [read.value.host, read.value.port]).toEqual(['127.0.0.1', 7517]);
});

test('what is said of the network is taken, and what cannot be is told in a line', () => {
  const read = readEnvironment({
    SHOULDERLINE_NETWORK: '1',
    SHOULDERLINE_NETWORK_HOST: '192.168.1.20,10.0.0.4',
    SHOULDERLINE_NETWORK_PORT: '443',
    SHOULDERLINE_TRUST_PORT: '80',
    SHOULDERLINE_NETWORK_NAME: 'Planer-PC',
  });
  expect(read.ok && read.value.network).toEqual({
    on: true,
    hosts: ['192.168.1.20', '10.0.0.4'],
    port: 443,
    trustPort: 80,
    name: 'planer-pc.local',
  });
  const unnamed = readEnvironment({ SHOULDERLINE_NETWORK_NAME: '0' });
  expect(unnamed.ok && unnamed.value.network.name).toBeNull();
  for (const [name, said] of [
    ['SHOULDERLINE_NETWORK', 'yes'],
    ['SHOULDERLINE_NETWORK_HOST', '0.0.0.0'],
    ['SHOULDERLINE_NETWORK_HOST', '203.0.113.9'],
    ['SHOULDERLINE_NETWORK_PORT', '70000'],
    ['SHOULDERLINE_TRUST_PORT', 'x'],
    ['SHOULDERLINE_NETWORK_NAME', 'planer-pc.local'],
    ['SHOULDERLINE_HOST', '192.168.1.20'],
  ] as const) {
    const refused = readEnvironment({ [name]: said });
    expect(refused.ok ? '' : refused.message).toMatch(new RegExp(`^${name}: .*; got ${said}$`));
  }
});
