// @vitest-environment node

import { afterEach, expect, test, vi } from 'vitest';
import { KeptMarks } from '#ui/hub/kept-marks.ts';
import { openDatabase } from '#ui/hub/open-database.ts';

afterEach(() => vi.useRealTimers());

/** A browser that takes the request and never answers it. */
const silent = { open: () => ({}) } as unknown as IDBFactory;

test('a database that is never opened fails after a while, so that Done says that nothing was kept', async () => {
  vi.useFakeTimers();
  const adding = expect(
    new KeptMarks('silent', silent).add({
      mark: {
        id: '00000000-0000-4000-8000-000000000001',
        code: '803AX3UERH',
        station: 'milling',
        stage: 'mill',
        mark: 'done',
        at: '2026-11-25T08:00:00.000Z',
      },
      job: 'j',
      door: 'A-1',
      part: 'panel',
    }),
  ).rejects.toThrow('did not open');
  await vi.advanceTimersByTimeAsync(5000);
  await adding;
});

test('a refusal is told at once', async () => {
  const refusing = {
    open() {
      const request: Partial<IDBOpenDBRequest> = { error: new DOMException('denied', 'SecurityError') };
      queueMicrotask(() => {
        request.onerror?.call(request as IDBOpenDBRequest, new Event('error'));
      });
      return request;
    },
  } as unknown as IDBFactory;
  await expect(openDatabase('refused', () => undefined, refusing)).rejects.toThrow('denied');
});
