import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';

/** A machine with a network of its own: what is run in it knows nothing of this one's. */
export interface Machine {
  /** What a command is started by, to run there. */
  readonly through: readonly string[];
  /** Runs a line of a shell there, and gives what it prints. */
  run(line: string): string;
}

/** Two such machines joined by one cable, "shop" at the first end and "desk" at the other; `end` takes both away. */
export async function twoMachines(): Promise<{
  readonly first: Machine;
  readonly second: Machine;
  readonly end: () => void;
}> {
  const holders = [holder(), holder()];
  await Promise.all(holders.map(({ stdout }) => once(stdout, 'data')));
  const [first, second] = holders.map(({ pid = 0 }): Machine => {
    const through = ['nsenter', '-t', String(pid), '-n'];
    return {
      through,
      run: (line) =>
        execFileSync('nsenter', ['-t', String(pid), '-n', 'sh', '-ec', line], { encoding: 'utf8' }),
    };
  });
  if (first === undefined || second === undefined) throw new Error('there are two');
  first.run(
    `ip link set lo up; ip link add shop type veth peer name desk; ip link set desk netns ${String(holders[1]?.pid)}`,
  );
  second.run('ip link set lo up');
  return { first, second, end: () => holders.forEach((each) => each.kill()) };
}

/** Can networks be made here at all? */
export function canHaveMachines(): boolean {
  return spawnSync('unshare', ['-n', 'sh', '-c', 'ip link add shop type veth peer name desk']).status === 0;
}

/** A process that does nothing but hold a network. */
function holder() {
  return spawn('unshare', ['-n', 'sh', '-c', 'echo held; exec sleep 3600'], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
}
