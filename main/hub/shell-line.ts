/** What the hub asks of the shell that started it. */
export interface ShellMessage {
  readonly kind: 'leave-full-screen';
}

/** The line to the shell; there is none when the hub runs alone. */
export interface ShellLine {
  tell(message: ShellMessage): void;
}

/** As much of a process as tells who started it. */
export interface Started {
  readonly parentPort?: { postMessage(message: unknown): void };
  readonly send?: (message: unknown) => boolean;
}

/** The line to the shell that this process was started by: Electron's parent port, or Node's channel. */
export function shellLine(own: Started): ShellLine | null {
  const { parentPort } = own;
  if (parentPort !== undefined) return { tell: (message) => parentPort.postMessage(message) };
  if (own.send === undefined) return null;
  return { tell: (message) => own.send?.(message) };
}
