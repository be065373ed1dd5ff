import 'fake-indexeddb/auto';
import { fireEvent, render, waitFor } from '@testing-library/svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Network, Offer } from '#core/api/network-api.ts';
import { speak } from '#core/words/say.ts';
import Office from '#ui/office/Office.svelte';
import { englishShown } from '../english-shown.ts';

const at = new Date().toISOString();
const NETWORK: Network = {
  state: 'on',
  reason: null,
  told: false,
  pin: true,
  addresses: [{ screens: 'https://192.168.1.20:7518', trust: null, symbol: ['10', '01'] }],
  named: null,
  fingerprint: ['A0', 'B1', 'C2', 'D3'].map((pair) => Array(8).fill(pair).join(':')).join(':'),
  devices: [
    { id: 'a', name: 'T1', station: 'bench', since: at, seen: at, here: true, online: true, clock: 99_000 },
    { id: 'b', name: 'T2', station: 'fitting', since: at, seen: at, here: false, online: false, clock: 0 },
    { id: 'c', name: 'T3', station: 'assembly', since: at, seen: at, here: false, online: false },
  ],
};
const OFFER: Offer = {
  code: 'ABCD2345',
  until: new Date(Date.now() + 600_000).toISOString(),
  at: [{ named: false, pairing: 'https://p', pairingSymbol: ['10', '01'], trust: null, trustSymbol: null }],
};
const ANSWERS: Readonly<Record<string, unknown>> = {
  '/api/network': NETWORK,
  '/api/network/offers': OFFER,
  '/api/jobs': { jobs: [] },
  '/api/bin': { jobs: [] },
  '/api/stickers': { jobs: [] },
  '/api/backups': { backups: [{ name: 'b1', at, bytes: 4096 }] },
  '/api/backups/elsewhere': { folder: null, trouble: null, last: null, backups: [] },
  '/api/session': { pin: true, open: true },
  '/api/health': {
    ok: true,
    version: '1',
    seq: 3,
    troubles: [],
    more: {
      data: '/data',
      disk: { free: 1e9, total: 2e9 },
      log: { bytes: 1e6, lines: 3, trouble: null, damaged: [], torn: 0, strange: 0, knewMore: [] },
      aside: [],
      lastBackup: null,
      backupTrouble: null,
      lock: { pid: 1, started: at, boot: '' },
    },
  },
};

beforeEach(() => {
  speak('de');
  Element.prototype.scrollIntoView = () => undefined;
  vi.stubGlobal('fetch', (path: string) => Promise.resolve(Response.json(ANSWERS[path] ?? {})));
});
afterEach(() => {
  speak('en');
  vi.unstubAllGlobals();
});

const click = async (selector: string) => {
  await waitFor(() => expect(document.querySelector(selector)).not.toBeNull());
  const target = document.querySelector(selector);
  if (target !== null) await fireEvent.click(target);
};

test('the office’s pages of network, PIN and backups are wholly in German', async () => {
  render(Office, { locked: () => undefined });
  await click('[data-page="network"]');
  await click('[data-action="offer"]');
  await waitFor(() => expect(document.querySelector('[data-code]')).not.toBeNull());
  await click('[data-device="T2"] [data-action="revoke"]');
  expect(document.body.textContent).toContain('Zuletzt gesehen');
  expect(document.body.textContent).toContain('99\u00a0s vor');
  expect(englishShown()).toEqual([]);
  await click('[data-page="safety"]');
  await waitFor(() => expect(document.body.textContent).toContain('Letzte Sicherung'));
  expect(englishShown()).toEqual([]);
});
