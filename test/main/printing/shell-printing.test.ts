import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { ShellLine, ShellMessage } from '#main/printing/shell-line.ts';
import { printingHere } from '#main/printing/printing-here.ts';
import { shellPrinting } from '#main/printing/shell-printing.ts';
import { answerPrintAsk, printAsk } from '#main/shell/silent-print.ts';

type Print = Parameters<
  Parameters<typeof answerPrintAsk>[1] extends () => infer W ? (window: W) => void : never
>[0]['webContents']['print'];
interface Seen {
  files: { path: string; bytes: string }[];
  options: unknown[];
  destroyed: number;
}

/** The shell as it answers over the parent port, with windows that only remember what they were asked. */
function shellWith(outcome: readonly [boolean, string] | null, seen: Seen): ShellLine {
  let listen: (message: unknown) => void = () => undefined;
  const print = ((options: unknown, done: (ok: boolean, why: string) => void) => {
    seen.options.push(options);
    if (outcome !== null) done(...outcome);
  }) as Print;
  const window = {
    loadFile: async (path: string) => void seen.files.push({ path, bytes: readFileSync(path, 'utf8') }),
    destroy: () => void (seen.destroyed += 1),
    webContents: {
      print,
      getPrintersAsync: async () => [
        {
          name: 'Labels',
          displayName: 'Label printer',
          description: '',
          options: {},
          status: 0,
          isDefault: true,
        },
      ],
    },
  };
  return {
    hear: (own) => void (listen = own),
    tell: (message: ShellMessage) => {
      const asked = printAsk(JSON.parse(JSON.stringify(message)));
      if (asked !== null) void answerPrintAsk(asked, () => window).then((answer) => listen(answer));
    },
  };
}

const paper = { pdf: new TextEncoder().encode('%PDF-1.7 stickers'), title: 'Stickers' };
const never = new AbortController().signal;

test('the shell lists its printers and prints a PDF without a dialog, at 100 %', async () => {
  const seen: Seen = { files: [], options: [], destroyed: 0 };
  const printing = shellPrinting(shellWith([true, ''], seen));
  expect(await printing.list()).toEqual({
    ok: true,
    printers: [{ name: 'Labels', description: 'Label printer', accepting: true, state: 'idle' }],
  });
  expect(await printing.print('Labels', paper, never)).toEqual({ ok: true });
  expect(seen.files.map(({ bytes }) => bytes)).toEqual(['%PDF-1.7 stickers']);
  expect(existsSync(seen.files[0]?.path ?? '')).toBe(false);
  expect(seen.options).toEqual([
    { silent: true, deviceName: 'Labels', scaleFactor: 100, margins: { marginType: 'none' } },
  ]);
  expect(seen.destroyed).toBe(3);
});

test('a printer that fails, one that is not in the list and a shell that is silent are told apart', async () => {
  const seen: Seen = { files: [], options: [], destroyed: 0 };
  const failing = shellPrinting(shellWith([false, 'Invalid deviceName'], seen));
  expect(await failing.print('Labels', paper, never)).toMatchObject({
    code: 'printer-fault',
    figures: { reason: 'Invalid deviceName' },
  });
  expect(await failing.print('Attic', paper, never)).toMatchObject({ code: 'printer-unknown' });
  const silent = shellPrinting(shellWith(null, seen), 50);
  expect(await silent.print('Labels', paper, never)).toMatchObject({ code: 'printer-silent' });
});

test('only a whole message about printing is taken', () => {
  for (const message of [
    null,
    'print',
    { kind: 'print', ask: 1 },
    { kind: 'list-printers' },
    { kind: 'leave', ask: 1 },
  ])
    expect(printAsk(message)).toBe(null);
});

test('on Windows the shell prints where there is one; elsewhere CUPS does', async () => {
  const seen: Seen = { files: [], options: [], destroyed: 0 };
  const shell = shellWith([true, ''], seen);
  expect(await printingHere(shell, 'win32').list()).toMatchObject({ ok: true });
  expect(seen.destroyed).toBe(1);
  await printingHere(shell, 'linux').list();
  expect(seen.destroyed).toBe(1);
});
