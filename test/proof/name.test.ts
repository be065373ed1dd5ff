import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import { expect, onTestFinished, test } from 'vitest';
import { networkAnswer, offerAnswer } from '#core/api/network-api.ts';
import { freshData, removeData } from '../e2e/hub-process.ts';
import { canHaveMachines, type Machine, twoMachines } from './two-machines.ts';

const HUB = join(import.meta.dirname, '..', '..', 'dist', 'hub', 'main.js');
const OTHER = join(import.meta.dirname, 'ask-name.mjs');
const KEYS = z.object({ authority: z.object({ certificate: z.string() }) });
const NAME = 'planer-pc.local';
const ANSWERS = z.object({ partner: z.array(z.string()), asker: z.array(z.string()) });

/** Two machines in one network, the hub at the first, at 10.77.0.1; it is called as said. */
async function shopNetwork(called: string) {
  expect(canHaveMachines(), 'networks of our own cannot be made here').toBe(true);
  const { first, second, end } = await twoMachines();
  onTestFinished(end);
  first.run('ip addr add 10.77.0.1/24 dev shop; ip link set shop up; ip route add 224.0.0.0/4 dev shop');
  second.run('ip addr add 10.77.0.2/24 dev desk; ip link set desk up; ip route add 224.0.0.0/4 dev desk');
  const data = freshData();
  onTestFinished(() => removeData(data));
  const there = (line: string[]) => second.run(line.map((each) => `'${each}'`).join(' '));
  return {
    first,
    second,
    data,
    ask: (name = NAME) => ANSWERS.parse(JSON.parse(there([process.execPath, OTHER, 'ask', name]))),
    get: (url: string, address: string) => {
      const ca = join(data, 'authority.pem');
      const keys = KEYS.parse(JSON.parse(readFileSync(join(data, 'network-keys.json'), 'utf8')));
      writeFileSync(ca, keys.authority.certificate);
      return there([process.execPath, OTHER, 'get', url, address, ca]);
    },
    hub: () => startHub(first, data, called),
  };
}

/** The built hub in that machine, with a PIN and its network on. */
async function startHub(machine: Machine, data: string, called: string) {
  const child = await started(machine, [HUB], 'LISTENING', {
    SHOULDERLINE_DATA: data,
    SHOULDERLINE_PORT: '7517',
    ...(called === '' ? {} : { SHOULDERLINE_NETWORK_NAME: called }),
  });
  /** Asks the hub at its own machine. */
  const ask = (
    method: string,
    path: string,
    body?: unknown,
    cookie = '',
  ): { cookie: string; body: unknown } =>
    z
      .object({ cookie: z.string(), body: z.unknown() })
      .parse(
        JSON.parse(
          machine.run(
            `'${process.execPath}' -e '${SAY}' ${method} /api${path} '${JSON.stringify(body ?? null)}' '${cookie}'`,
          ),
        ),
      );
  return { child, ask };
}

const SAY =
  'const [method, path, body, cookie] = process.argv.slice(1);' +
  'fetch(`http://127.0.0.1:7517${path}`, { method, headers: { cookie, "content-type": "application/json" }, ...(body === "null" ? {} : { body }) })' +
  '.then(async (a) => process.stdout.write(JSON.stringify({ cookie: (a.headers.get("set-cookie") ?? "").replace(/;.*/, ""), body: await a.json() })));';

/** Starts a program of Node there, and waits until it says so much; it ends with the test. */
async function started(
  machine: Machine,
  args: readonly string[],
  says: string,
  env: Readonly<Record<string, string>> = {},
): Promise<ChildProcess> {
  const [program = '', ...before] = machine.through;
  const child = spawn(program, [...before, process.execPath, ...args], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, ...env },
  });
  onTestFinished(() => void child.kill('SIGKILL'));
  let said = '';
  await new Promise<void>((ready) =>
    child.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      if (said.includes(says)) ready();
    }),
  );
  return child;
}

test('the hub is found by its name from another machine, with its certificate, wherever its address goes', async () => {
  const shop = await shopNetwork('planer-pc');
  const { ask } = await shop.hub();
  expect(shop.ask()).toEqual({ partner: [], asker: [] });
  const { cookie } = ask('PUT', '/pin', { pin: '2468' });
  ask('PUT', '/network', { on: true }, cookie);
  const network = () => networkAnswer.parse(ask('GET', '/network', undefined, cookie).body);
  await expect.poll(() => network().named?.screens, { timeout: 20_000 }).toBe(`https://${NAME}:7518`);
  expect(network().addresses.map(({ screens }) => screens)).toEqual(['https://10.77.0.1:7518']);
  expect(shop.ask()).toEqual({ partner: ['10.77.0.1'], asker: ['10.77.0.1'] });
  expect(shop.ask('bench.local')).toEqual({ partner: [], asker: [] });
  expect(shop.get(`https://${NAME}:7518/api/pairing`, '10.77.0.1')).toBe('200');
  const { at } = offerAnswer.parse(ask('POST', '/network/offers', {}, cookie).body);
  expect(at.map(({ pairing, named }) => [pairing, named])).toEqual([
    [`https://${NAME}:7518/pairing`, true],
    ['https://10.77.0.1:7518/pairing', false],
  ]);

  // It is looked once a minute whether this machine has other addresses.
  shop.first.run(
    'ip addr del 10.77.0.1/24 dev shop; ip addr add 10.77.0.5/24 dev shop; ip route replace 224.0.0.0/4 dev shop',
  );
  await expect
    .poll(() => shop.ask(), { timeout: 90_000, interval: 2000 })
    .toEqual({ partner: ['10.77.0.5'], asker: ['10.77.0.5'] });
  expect(shop.get(`https://${NAME}:7518/api/pairing`, '10.77.0.5')).toBe('200');
  await expect.poll(() => network().named?.screens, { timeout: 20_000 }).toBe(`https://${NAME}:7518`);

  ask('PUT', '/network', { on: false }, cookie);
  expect(shop.ask()).toEqual({ partner: [], asker: [] });
}, 300_000);

test('a name that another machine has is left to it, and devices are paired by the address', async () => {
  const shop = await shopNetwork('');
  const name = `${hostname().toLowerCase().replace(/\..*/, '')}.local`;
  const other = await started(shop.second, [OTHER, 'be', name, '10.77.0.2'], 'ready');
  const { ask } = await shop.hub();
  const { cookie } = ask('PUT', '/pin', { pin: '2468' });
  ask('PUT', '/network', { on: true }, cookie);
  const network = () => networkAnswer.parse(ask('GET', '/network', undefined, cookie).body);
  // Time enough to have announced it.
  await new Promise((over) => setTimeout(over, 4000));
  expect(network().named).toBeNull();
  expect(shop.ask(name).partner).toEqual(['10.77.0.2']);
  // Once that machine is gone the name is free.
  other.kill();
  await expect
    .poll(() => shop.ask(name), { timeout: 90_000, interval: 2000 })
    .toEqual({ partner: ['10.77.0.1'], asker: ['10.77.0.1'] });
  expect(network().named?.screens).toBe(`https://${name}:7518`);
}, 300_000);
