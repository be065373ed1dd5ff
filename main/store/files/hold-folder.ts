import { barredFolder } from './barred-folder.ts';
import { type FilePort, isUnwritable, StoreTrouble, wordsOf } from './file-port.ts';
import { FolderLost, heldFolder } from './held-folder.ts';
import { type Holder, UNREADABLE } from './holder.ts';
import { BEAT, type Beat } from './judge-lock.ts';
import { type Locking, type Taken, takeLock } from './lock.ts';
import { type ProcessTable, systemProcesses, UNKNOWN } from './process-table.ts';

/** A data folder held for as long as this process works on it. */
export interface HeldFolder extends Pick<Taken, 'holder' | 'takenOver' | 'certain'> {
  /** Its files; nothing is changed in them once it is not held any more. */
  readonly files: FilePort;
  /** Settles when another has it, or the lock was taken away; never while it is held. */
  readonly lost: Promise<FolderLost>;
  /** Why it is not this process's any more, as far as that was found; looks again when the last look is a while ago. */
  whyLost(): Promise<FolderLost> | null;
  release(): Promise<void>;
}

export interface HoldOptions {
  readonly table?: ProcessTable;
  readonly beat?: Beat;
}

/** For reads so long a look is good; what is written is looked at each time. */
const GOOD_MS = 200;

/** Takes a folder, and beats until it is released. */
export async function holdFolder(
  port: FilePort,
  folder: string,
  { table = systemProcesses, beat = BEAT }: HoldOptions = {},
): Promise<
  { readonly ok: true; readonly held: HeldFolder } | { readonly ok: false; readonly holder: Holder }
> {
  const lock: Locking = await takeLock(port, folder, process.pid, table, beat);
  if (!lock.ok) return lock;
  return { ok: true, held: beating(port, lock, beat) };
}

/**
 * The same, and where nothing can be written, not even a lock, the folder to be looked at: nobody is kept from it, and
 * nothing of it is changed.
 */
export async function holdOrLook(
  port: FilePort,
  folder: string,
  options?: HoldOptions,
): ReturnType<typeof holdFolder> {
  try {
    return await holdFolder(port, folder, options);
  } catch (error) {
    if (!isUnwritable(error)) throw error;
    const barred = new StoreTrouble(`nothing can be written in the data folder (${wordsOf(error)})`, error);
    return { ok: true, held: lookedAt(barredFolder(port, barred)) };
  }
}

function lookedAt(files: FilePort): HeldFolder {
  return {
    holder: { ...UNREADABLE, pid: process.pid, started: UNKNOWN, boot: UNKNOWN },
    certain: true,
    files,
    lost: new Promise(() => undefined),
    whyLost: () => null,
    release: () => Promise.resolve(),
  };
}

function beating(port: FilePort, lock: Taken, { everyMs }: Beat): HeldFolder {
  let why: Promise<FolderLost> | null = null;
  let looked = performance.now();
  let tellLost: (why: Promise<FolderLost>) => void = () => undefined;
  const lost = new Promise<FolderLost>((told) => (tellLost = told));
  const look: Taken['look'] = () => {
    const found = lock.look();
    looked = performance.now();
    if (found === 'lost' && why === null) {
      why = lock.successor().then((holder) => new FolderLost(holder));
      tellLost(why);
    }
    return found;
  };
  let beat: Promise<void> = Promise.resolve();
  let under = false;
  const timer = setInterval(() => {
    // One that waits for a slow disk is beat enough.
    if (look() !== 'held' || under) return;
    under = true;
    beat = lock
      .beat()
      .catch(() => undefined)
      .finally(() => (under = false));
  }, everyMs);
  timer.unref();
  return {
    holder: lock.holder,
    ...(lock.takenOver === undefined ? {} : { takenOver: lock.takenOver }),
    certain: lock.certain,
    files: heldFolder(port, { look, successor: () => lock.successor(), room: lock.room }),
    lost,
    whyLost() {
      if (performance.now() - looked > GOOD_MS) look();
      return why;
    },
    async release() {
      clearInterval(timer);
      await beat;
      await lock.release();
    },
  };
}
