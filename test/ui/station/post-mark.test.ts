import 'fake-indexeddb/auto';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { stageName, stationName } from '#core/telling/names.ts';
import type { Plan } from '#core/plan/plan.ts';
import { live } from '#ui/hub/live.svelte.ts';
import { newMark, postMark } from '#ui/station/post-mark.ts';
import { Station } from '#ui/station/station.svelte.ts';
import { openShop } from './shop-for-stations.ts';

let plan: Plan;
beforeEach(() => {
  ({ plan } = openShop());
  live.away = true;
});
afterEach(() => {
  live.away = false;
  vi.restoreAllMocks();
});

const codeOf = (part: string) => plan.doors[0]?.parts.find((each) => each.part === part)?.code ?? '';
async function refusal(
  ...[station, part, stage, mark]: [Parameters<typeof newMark>[0], string, string, 'done' | 'undo']
) {
  const posted = await postMark(newMark(station, codeOf(part), stage, mark));
  return posted?.kind === 'refused' ? posted.message : posted?.kind;
}

test('cut off from the hub, what comes first is told by its name', async () => {
  expect(await refusal('router-table', 'stile-left', 'bead', 'done')).toBe(
    `Not yet. First: ${stageName('mill')}.`,
  );
});

test('cut off from the hub, the station where it is done and a stage that is not done are told by name', async () => {
  expect(await refusal('bench', 'stile-left', 'bead', 'done')).toContain(stationName('router-table'));
  expect(await refusal('table-saw', 'rail-top', 'strip', 'undo')).not.toMatch(/\bstrip is\b/);
  expect(await refusal('milling', 'stile-left', 'mill', 'undo')).toContain(stageName('mill'));
});

test('a station says that a mark was refused, so that its sign is no tick', async () => {
  live.away = false;
  const station = new Station('milling');
  vi.spyOn(live.outbox, 'post').mockResolvedValue({ kind: 'refused', code: 'already-done', message: 'done' });
  station.scan(codeOf('stile-left'));
  await station.done();
  expect(station.message).toMatchObject({ code: 'already-done', refused: true });
});
