/** What the hub asks of the shell that started it. */
export type ShellMessage =
  | { readonly kind: 'leave-full-screen' }
  | { readonly kind: 'list-printers'; readonly ask: number }
  | { readonly kind: 'print'; readonly ask: number; readonly printer: string; readonly path: string };

/** The line to the shell; there is none when the hub runs alone. */
export interface ShellLine {
  tell(message: ShellMessage): void;
  /** What the shell answers; every message to every listener. */
  hear(listen: (message: unknown) => void): void;
}

/** As much of a process as tells who started it. */
export interface Started {
  readonly parentPort?: {
    postMessage(message: unknown): void;
    on(event: 'message', listen: (event: { readonly data: unknown }) => void): unknown;
  };
  readonly send?: (message: unknown) => boolean;
  on(event: 'message', listen: (message: unknown) => void): unknown;
}

/** The line to the shell that this process was started by: Electron's parent port, or Node's channel. */
export function shellLine(own: Started): ShellLine | null {
  const { parentPort } = own;
  if (parentPort !== undefined)
    return {
      tell: (message) => parentPort.postMessage(message),
      hear: (listen) => void parentPort.on('message', ({ data }) => listen(data)),
    };
  if (own.send === undefined) return null;
  return {
    tell: (message) => own.send?.(message),
    hear: (listen) => void own.on('message', listen),
  };
}
