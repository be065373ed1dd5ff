import { chmodSync, cpSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { Plan } from '#core/plan/plan.ts';
import { trimOf } from '#core/plan/trim-of.ts';
import { liveHub, type LiveHub } from '../hub/live-hub.ts';
import { isTree } from '#core/fields/read-shape.ts';
import { askOver } from '../network/ask-over.ts';
import { TOLD } from '../network/over-network.ts';
import { type Standing, standingOf } from '../../kept/standing.ts';

const KEPT = join(import.meta.dirname, '..', '..', 'kept');
const PIN = '7305';
/** A door of each folder's oldest backup, and how far it had come. */
const IN_OLDEST: Readonly<Record<string, readonly [string, string]>> = {
  '0.1.0': ['SPICE-1', 'done'],
  '0.3.0': ['T-1', 'trim'],
  '0.5.0': ['M-1', 'done'],
};

const DEVICE = z.object({ cookie: z.string(), fingerprint: z.string() });
const KEYS = z.object({ authority: z.object({ certificate: z.string() }) });

/** A hub on a copy of a kept folder. */
async function hubOn(version: string): Promise<LiveHub> {
  const hub = await liveHub({ network: TOLD });
  await hub.hub.stop();
  cpSync(join(KEPT, version, 'data'), hub.data, { recursive: true });
  chmodSync(join(hub.data, 'pin.json'), 0o600);
  await hub.start();
  return hub;
}

/** What the hub tells now; each side's own trim, which the oldest folders were not told of, is held to what was said of both. */
async function standingNow(hub: LiveHub): Promise<Standing> {
  const standing = await standingOf(hub);
  for (const { doors } of standing.plans as readonly Pick<Plan, 'doors'>[])
    for (const { values } of doors) expect(values.trim).toEqual(trimOf(values));
  return standing;
}

function kept(version: string, name: string): unknown {
  return JSON.parse(readFileSync(join(KEPT, version, name), 'utf8'));
}

/**
 * What is told now of what was told then: settings that plans have only had since are left out, and the dado, a tool that
 * a later version chooses anew; a stage more, or a number that is another, is not.
 */
function asThen(now: unknown, then: unknown): unknown {
  if (Array.isArray(now) && Array.isArray(then) && now.length === then.length)
    return now.map((each: unknown, k) => asThen(each, then[k]));
  if (!isTree(now) || !isTree(then)) return now;
  const known = Object.entries(now).filter(([name]) => Object.hasOwn(then, name));
  return Object.fromEntries(
    known.map(([name, value]) => [name, name === 'blade' ? then.blade : asThen(value, then[name])]),
  );
}

describe.each(readdirSync(KEPT, { withFileTypes: true }).filter((each) => each.isDirectory()))(
  'a data folder kept by version $name',
  ({ name: version }) => {
    it('opens with the same plans, codes, board and queues, and nothing put aside', async () => {
      const hub = await hubOn(version);
      const then = kept(version, 'standing.json');
      expect(asThen(await standingNow(hub), then)).toEqual(then);
      expect(hub.hub.store.jobs.troubles).toEqual([]);
    });

    it('stands the same after its second start', async () => {
      const hub = await hubOn(version);
      await hub.restart();
      const then = kept(version, 'standing.json');
      expect(asThen(await standingNow(hub), then)).toEqual(then);
    });

    it('takes the mark that a station had kept, and knows its PIN', async () => {
      const hub = await hubOn(version);
      const mark = kept(version, 'station-mark.json') as Record<string, unknown>;
      const taken = await hub.ask('POST', '/marks', mark);
      expect([taken.status, taken.body.code]).toEqual([200, mark.code]);
      const again = await hub.ask('POST', '/marks', mark);
      expect([again.status, again.body]).toEqual([200, taken.body]);
      expect((await hub.ask('POST', '/session', { pin: '0000' })).status).not.toBe(200);
      expect((await hub.ask('POST', '/session', { pin: PIN })).status).toBe(200);
    });

    it('puts its newest backup back with the same plans, codes, board and queues', async () => {
      const hub = await hubOn(version);
      const opened = await hub.ask('POST', '/session', { pin: PIN });
      const cookie = opened.headers
        .getSetCookie()
        .map((each) => each.split(';')[0])
        .join('; ');
      const list = await hub.ask('GET', '/backups', undefined, { cookie });
      const [newest, oldest] = list.body.backups as { name: string }[];
      const restored = await hub.ask('POST', `/backups/${newest?.name ?? ''}/restore`, {}, { cookie });
      expect(restored.status).toBe(200);
      const expected = kept(version, 'standing.json') as Standing;
      const { progress: _numbers, ...standing } = await standingNow(hub);
      const { progress: _before, ...before } = expected;
      expect(asThen(standing, before)).toEqual(before);
      expect((await hub.ask('POST', `/backups/${oldest?.name ?? ''}/restore`, {}, { cookie })).status).toBe(
        200,
      );
      const { board } = await standingOf(hub);
      const [door, stage] = IN_OLDEST[version] ?? [];
      const doors = (board as { doors: { door: string; stage: string }[] }).doors;
      expect(doors.find((each) => each.door === door)?.stage).toBe(stage);
    });
  },
);

it('opens a kept folder’s network again: its certificate is the one that devices trust, and a paired one is let in', async () => {
  const { hub, data } = await hubOn('0.5.0');
  const device = DEVICE.parse(kept('0.5.0', 'device.json'));
  expect([hub.network.state, hub.network.fingerprint]).toEqual(['on', device.fingerprint]);
  const { authority } = KEYS.parse(JSON.parse(readFileSync(join(data, 'network-keys.json'), 'utf8')));
  const url = hub.network.addresses[0]?.screens ?? '';
  const boards = [{ cookie: device.cookie }, { cookie: device.cookie.replace(/.$/, '') }].map((headers) =>
    askOver(url, authority.certificate, 'GET', '/api/board', { headers }),
  );
  expect((await Promise.all(boards)).map(({ status }) => status)).toEqual([200, 401]);
});
