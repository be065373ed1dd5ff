import type { BrowserWindow, WebContents } from 'electron';

/** What the hub asks of the shell about printing. */
export type PrintAsk =
  | { readonly kind: 'list-printers'; readonly ask: number }
  | { readonly kind: 'print'; readonly ask: number; readonly printer: string; readonly path: string };

/** Reads a message of the hub; null where it is about something else. */
export function printAsk(message: unknown): PrintAsk | null {
  if (typeof message !== 'object' || message === null || !('kind' in message) || !('ask' in message))
    return null;
  const { kind, ask } = message;
  if (typeof ask !== 'number') return null;
  if (kind === 'list-printers') return { kind, ask };
  if (kind !== 'print' || !('printer' in message) || !('path' in message)) return null;
  const { printer, path } = message;
  return typeof printer === 'string' && typeof path === 'string' ? { kind, ask, printer, path } : null;
}

type Window = Pick<BrowserWindow, 'loadFile' | 'destroy'> & {
  readonly webContents: Pick<WebContents, 'print' | 'getPrintersAsync'>;
};

/** How a hidden window for a PDF is made: nothing of Node in it; the PDF viewer is a plugin. */
export const HIDDEN = {
  show: false,
  webPreferences: { sandbox: true, contextIsolation: true, nodeIntegration: false, plugins: true },
} as const;

/** Answers the hub: the system's printers, or a PDF printed without a dialog, at 100 % and without margins of its own. */
export async function answerPrintAsk(ask: PrintAsk, open: () => Window): Promise<Record<string, unknown>> {
  const window = open();
  try {
    if (ask.kind === 'list-printers') {
      const printers = await window.webContents.getPrintersAsync();
      return {
        kind: 'printers',
        ask: ask.ask,
        printers: printers.map(({ name, displayName }) => ({ name, description: displayName })),
      };
    }
    await window.loadFile(ask.path);
    const { ok, reason } = await new Promise<{ ok: boolean; reason: string }>((ended) =>
      window.webContents.print(
        { silent: true, deviceName: ask.printer, scaleFactor: 100, margins: { marginType: 'none' } },
        (done, why: string | undefined) => ended({ ok: done, reason: why ?? '' }),
      ),
    );
    return { kind: 'print-ended', ask: ask.ask, ok, reason };
  } catch (error) {
    return {
      kind: 'print-ended',
      ask: ask.ask,
      ok: false,
      reason: error instanceof Error ? error.message : String(error),
    };
  } finally {
    window.destroy();
  }
}
