import { expect, test, vi } from 'vitest';
import { PrintDesk, type PrintJob } from '#main/printing/print-desk.ts';
import { type Paper, type PrintSystem, refused } from '#main/printing/printer.ts';

const paper: Paper = { pdf: new Uint8Array(1), title: 'Stickers' };
const system = (print: PrintSystem['print']): PrintSystem => ({
  list: async () => ({ ok: true, printers: [] }),
  print,
});
const job = (more: Partial<PrintJob<{ paper: Paper }>> = {}): PrintJob<{ paper: Paper }> => ({
  printer: 'Labels',
  make: async (progress) => {
    for (let made = 1; made <= 3; made += 1) await progress(made, 3);
    return { ok: true, paper };
  },
  printed: async () => undefined,
  ...more,
});
const over = async (desk: PrintDesk, id: string) => {
  await vi.waitFor(() => expect(desk.state(id, 'en')?.state).not.toMatch(/making|sending/));
  return desk.state(id, 'en');
};

test('a print is counted while it is made, and kept as printed once the printer let it go', async () => {
  const printed = vi.fn(async () => undefined);
  const seen: unknown[] = [];
  const desk: PrintDesk = new PrintDesk(
    system(async () => {
      seen.push(desk.state(id, 'en'));
      expect(printed).not.toHaveBeenCalled();
      return { ok: true };
    }),
  );
  const id = desk.start(job({ printed }));
  expect(desk.state(id, 'en')).toEqual({ state: 'making', made: 0, of: 0 });
  expect(await over(desk, id)).toEqual({ state: 'printed', made: 3, of: 3 });
  expect(seen).toEqual([{ state: 'sending', made: 3, of: 3 }]);
  expect(printed).toHaveBeenCalledOnce();
});

test('a printer that fails gives its message, and nothing is kept as printed', async () => {
  const printed = vi.fn(async () => undefined);
  const desk = new PrintDesk(
    system(async () => refused('printer-stopped', { printer: 'Labels', reason: 'out of labels' })),
  );
  const state = await over(desk, desk.start(job({ printed })));
  expect(state).toMatchObject({ state: 'failed', code: 'printer-stopped' });
  expect(state?.message).toContain('Labels is stopped: it says “out of labels”');
  expect(printed).not.toHaveBeenCalled();
});

test('a print that is taken back while it is made never reaches the printer', async () => {
  const print = vi.fn(async () => ({ ok: true as const }));
  const desk = new PrintDesk(system(print));
  const id = desk.start(
    job({
      make: async (progress) => {
        for (let made = 0; made < 1_000_000; made += 1) await progress(made, 1_000_000);
        return { ok: true, paper };
      },
    }),
  );
  await vi.waitFor(() => expect(desk.state(id, 'en')?.made).toBeGreaterThan(2));
  expect(desk.cancel(id)).toBe(true);
  expect(await over(desk, id)).toMatchObject({ state: 'cancelled', of: 1_000_000 });
  expect(desk.cancel(id)).toBe(false);
  expect(print).not.toHaveBeenCalled();
});

test('a paper that cannot be made says why', async () => {
  const desk = new PrintDesk(system(async () => ({ ok: true })));
  const id = desk.start(job({ make: async () => refused('not-made', { reason: 'no room' }) }));
  expect(await over(desk, id)).toMatchObject({ state: 'failed', code: 'not-made' });
});

test('what is printed but could not be written down says so', async () => {
  const desk = new PrintDesk(system(async () => ({ ok: true })));
  const id = desk.start(job({ printed: () => Promise.reject(new Error('disk full')) }));
  expect(await over(desk, id)).toMatchObject({ state: 'printed', code: 'not-recorded' });
});

test('closing takes back what is under way and waits for it', async () => {
  let aborted = false;
  const desk = new PrintDesk(
    system(
      (_printer, _paper, signal) =>
        new Promise((done) =>
          signal.addEventListener('abort', () => {
            aborted = true;
            done(refused('cancelled'));
          }),
        ),
    ),
  );
  const id = desk.start(job());
  await vi.waitFor(() => expect(desk.state(id, 'en')?.state).toBe('sending'));
  await desk.close();
  expect(aborted).toBe(true);
  expect(desk.state(id, 'en')?.state).toBe('cancelled');
});
