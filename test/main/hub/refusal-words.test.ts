import { expect, test } from 'vitest';
import { stageName, stationName } from '#core/telling/names.ts';
import { liveHub } from './live-hub.ts';

const JOB = {
  format: 1,
  job: 'Sail loft',
  units: 'in',
  doors: [{ mark: 'A', opening: { width: '16', height: '30' } }],
};

/** A hub with one door, and what it says when a mark of the left stile is refused. */
async function refusing() {
  const live = await liveHub();
  const { body } = await live.ask('POST', '/jobs', JOB);
  const parts = body.parts as { code: string; part: string }[];
  const code = parts.find(({ part }) => part === 'stile-left')?.code ?? '';
  let count = 0;
  return async (station: string, stage: string, mark = 'done') => {
    count += 1;
    const id = `00000000-0000-4000-8000-${String(count).padStart(12, '0')}`;
    const at = '2026-11-25T08:00:00.000Z';
    return (await live.ask('POST', '/marks', { id, code, station, stage, mark, at })).body;
  };
}

test('the hub tells in words what comes first, and names it by its id for programs', async () => {
  const mark = await refusing();
  const { message, missing } = await mark('router-table', 'bead');
  expect(missing).toEqual(['mill']);
  expect(message).toBe(`Not yet. First: ${stageName('mill')}.`);
  const glue = await mark('assembly', 'glue');
  expect(glue.missing).toContain('stile-left: mitre-top');
  expect(glue.message).toContain(`Left stile (${stageName('mill')})`);
  expect(glue.message).not.toMatch(/stile-left|mitre-top/);
  expect(glue.message).toMatch(/and \d+ more\.$/);
});

test('the hub tells in words where it is done, and what is done already', async () => {
  const mark = await refusing();
  expect((await mark('table-saw', 'bead')).message).toContain(stationName('router-table'));
  await mark('milling', 'mill');
  expect((await mark('milling', 'mill')).message).toContain(stageName('mill'));
  await mark('router-table', 'bead');
  const later = await mark('milling', 'mill', 'undo');
  expect(later.missing).toEqual(['bead']);
  expect(later.message).toContain(stageName('bead'));
});

test('a mark of a stage that the part has not is told as that, and not as a wrong code', async () => {
  const mark = await refusing();
  const told = await mark('bench', 'tenon');
  expect(told.code).toBe('malformed');
  expect(told.message).toContain(stageName('tenon'));
  expect(told.message).not.toMatch(/part code/);
});
