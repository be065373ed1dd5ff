// @vitest-environment node

import { IDBFactory } from 'fake-indexeddb';
import { afterEach, expect, test, vi } from 'vitest';
import { type Kept, KeptMarks } from '#ui/hub/kept-marks.ts';

afterEach(() => vi.useRealTimers());

let count = 0;
function mark(): Omit<Kept, 'order'> {
  count += 1;
  const id = `00000000-0000-4000-8000-${String(count).padStart(12, '0')}`;
  const at = '2026-11-25T08:00:00Z';
  return {
    mark: { id, code: '803AX3UERH', station: 'milling', stage: 'mill', mark: 'done', at },
    job: 'quay',
    door: 'A-1',
    part: 'panel',
  };
}

/** A browser's databases, which notes each that it opens, and may be slow. */
function browser() {
  const real = new IDBFactory();
  const opened: IDBDatabase[] = [];
  const state = { silent: false };
  const factory = {
    open(name: string, version: number) {
      if (state.silent) return {};
      const request = real.open(name, version);
      request.addEventListener('success', () => opened.push(request.result));
      return request;
    },
  } as unknown as IDBFactory;
  return { factory, opened, state };
}

test('a page whose database the browser closed keeps marks again, and finds those from before', async () => {
  const { factory, opened } = browser();
  const marks = new KeptMarks('closed', factory);
  await marks.add(mark());
  opened[0]?.close();
  expect(await marks.all()).toHaveLength(1);
  opened[1]?.close();
  const { order } = await marks.add(mark());
  opened[2]?.close();
  await marks.remove(order);
  expect(await marks.all()).toHaveLength(1);
});

test('a page whose database did not open in time keeps marks once it does', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  const { factory, state } = browser();
  state.silent = true;
  const marks = new KeptMarks('late', factory);
  const first = expect(marks.add(mark())).rejects.toThrow('did not open');
  await vi.advanceTimersByTimeAsync(5000);
  await first;
  state.silent = false;
  vi.useRealTimers();
  await marks.add(mark());
  expect(await marks.all()).toHaveLength(1);
});
