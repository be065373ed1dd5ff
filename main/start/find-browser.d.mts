/** An installed Chromium or Chrome; null when there is none. */
export function findBrowser(env?: Readonly<Record<string, string | undefined>>): string | null;
/** Electron's program, when it has been fetched; null when not. */
export function findElectron(root: string, env?: Readonly<Record<string, string | undefined>>): string | null;
