import { spawn } from 'node:child_process';

/** How a program ended, with what it wrote; or that there is no such program here. */
export type Ran =
  | { readonly kind: 'ended'; readonly code: number; readonly stdout: string; readonly stderr: string }
  | { readonly kind: 'missing' };

/** Runs a program with its arguments as they are, never through a shell. */
export type Run = (program: string, args: readonly string[], input?: Uint8Array) => Promise<Ran>;

/** Runs programs of this machine, speaking plain English whatever the user's language is, so that what they say can be read. */
export function runHere(env: NodeJS.ProcessEnv = process.env): Run {
  return (program, args, input) =>
    new Promise((ended, failed) => {
      const child = spawn(program, [...args], {
        shell: false,
        env: { ...env, LC_ALL: 'C' },
        stdio: ['pipe', 'pipe', 'pipe'],
      });
      let stdout = '';
      let stderr = '';
      child.stdout.setEncoding('utf8').on('data', (text: string) => (stdout += text));
      child.stderr.setEncoding('utf8').on('data', (text: string) => (stderr += text));
      child.on('error', (error: NodeJS.ErrnoException) =>
        error.code === 'ENOENT' ? ended({ kind: 'missing' }) : failed(error),
      );
      child.on('close', (code) => ended({ kind: 'ended', code: code ?? 1, stdout, stderr }));
      // A program that ends before it has read everything breaks the pipe; its exit code says what was wrong.
      child.stdin.on('error', () => undefined);
      child.stdin.end(input ?? '');
    });
}
