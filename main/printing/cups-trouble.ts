import type { Ran } from './program.ts';

/** Did a program of CUPS find nobody to talk to? */
export function isAsleep(ran: Ran): boolean {
  return (
    ran.kind === 'ended' && /scheduler is not running|unable to connect|connection refused/i.test(ran.stderr)
  );
}

/** What a program of CUPS said was wrong, in its own first line; its exit code where it said nothing. */
export function saidWrong({ stderr, code }: Extract<Ran, { kind: 'ended' }>): string {
  return (stderr.trim().split('\n')[0] ?? '').replace(/^\w+: (Error - )?/, '') || `exit ${code}`;
}
