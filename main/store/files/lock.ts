import { randomBytes } from 'node:crypto';
import { hostname } from 'node:os';
import { basename, join } from 'node:path';
import { codeOf, type FilePort, type GrowingFile, writeAll } from './file-port.ts';
import { type FoundLock, type Holder, lockPath, readLocks, UNREADABLE } from './holder.ts';
import { atOnce, BEAT, type Beat, heldHere, judgeLock, type Verdict } from './judge-lock.ts';
import { type ProcessTable, systemProcesses, UNKNOWN } from './process-table.ts';

/** A folder that this process has for itself. */
export interface Taken {
  readonly ok: true;
  readonly holder: Holder;
  readonly takenOver?: Holder;
  /** Nothing of whoever held it before can still be written. Else what is added to must be made anew first. */
  readonly certain: boolean;
  /** A folder in it for this holder's drafts. Who takes over moves it away: no draft gets its name after that. */
  readonly room: string;
  /**
   * Is the folder still this process's, at this moment? "away" when it is gone or another one stands there, "lost" when
   * its lock was taken away, for good. Costs one look at a small file.
   */
  look(): 'held' | 'away' | 'lost';
  /** Who has it by now; null when nobody has. */
  successor(): Promise<Holder | null>;
  /** One beat of the heart. Who does not run in this namespace tells by it that the holder lives. */
  beat(): Promise<void>;
  /** Gives it back. Another's lock that lies there by now is left alone. */
  release(): Promise<void>;
}

export type Locking = Taken | { readonly ok: false; readonly holder: Holder };

const ROOM = '.held-';
/** So many beats make a lock long enough to be cut back. */
const MOST_BEATS = 2000;

interface Judged extends FoundLock {
  readonly verdict: Verdict;
}

/**
 * Takes the folder for this process. Locks are numbered and the highest counts: one whose holder is over, or whose heart
 * stands still, is taken over by the next number, which appears whole, and to only one of several that try at once. Then
 * the locks before it go, and from then on who held them answers nothing more; whoever comes reads only after that.
 */
export async function takeLock(
  port: FilePort,
  folder: string,
  pid: number,
  table: ProcessTable = systemProcesses,
  beat: Beat = BEAT,
): Promise<Locking> {
  const mine: Holder = {
    pid,
    started: table.started(pid) ?? UNKNOWN,
    boot: table.boot,
    space: table.space,
    token: randomBytes(12).toString('hex'),
    host: hostname(),
  };
  const room = join(folder, `${ROOM}${mine.token}`);
  const draft = join(room, 'lock.json');
  const heart = await writeDraft(port, room, draft, mine);
  const giveWay = async (holder: Holder | null): Promise<Locking> => {
    await heart.close();
    await port.remove(room);
    return { ok: false, holder: holder ?? UNREADABLE };
  };
  try {
    for (;;) {
      const before = await judgeAll(port, await readLocks(port, folder), pid, table, beat, draft);
      const living = before.find(({ verdict }) => verdict === 'lives');
      if (living !== undefined) return await giveWay(living.holder);
      const rooms = (await port.list(folder)).filter(
        (name) => name.startsWith(ROOM) && name !== basename(room),
      );
      const last = before.at(-1);
      const path = lockPath(folder, (last?.number ?? 0) + 1);
      const linked = await linkUnlessGone(port, draft, path);
      // Another one that took it over meanwhile has cleared this room away: it lives.
      if (linked === null) return await giveWay((await readLocks(port, folder)).at(-1)?.holder ?? null);
      if (!linked) continue;
      // Somebody may have looked before this one was there: whoever then sees another one alive gives way.
      const rival = (await readLocks(port, folder)).find(
        (each) => each.path !== path && !isOver(each, before, pid, table),
      );
      if (rival !== undefined) {
        await port.remove(path);
        return await giveWay(rival.holder);
      }
      for (const dead of before) await port.remove(dead.path);
      for (const [k, name] of rooms.entries()) await clearAway(port, join(folder, name), join(room, `${k}`));
      await port.flushFolder(folder);
      heldHere.add(path);
      return {
        ok: true,
        holder: mine,
        ...(last === undefined ? {} : { takenOver: last.holder ?? UNREADABLE }),
        certain: isCertain(before, rooms),
        room,
        ...(await holding(port, folder, path, heart, mine, room)),
      };
    }
  } catch (error) {
    await heart.close().catch(() => undefined);
    await port.remove(room).catch(() => undefined);
    throw error;
  }
}

function judgeAll(
  port: FilePort,
  found: readonly FoundLock[],
  pid: number,
  table: ProcessTable,
  beat: Beat,
  probe: string,
): Promise<Judged[]> {
  return Promise.all(
    found.map(async (each) => ({ ...each, verdict: await judgeLock(port, each, pid, table, beat, probe) })),
  );
}

/** Was this lock judged before, with no beat since, or can it be told at once that its holder is over? */
function isOver(found: FoundLock, before: readonly Judged[], pid: number, table: ProcessTable): boolean {
  const known = before.some(({ path, bytes }) => path === found.path && bytes.equals(found.bytes));
  return known || atOnce(found, pid, table) === 'over';
}

/** Every holder of before is over for certain, and no other has left its room behind, as one whose lock was removed does. */
function isCertain(before: readonly Judged[], rooms: readonly string[]): boolean {
  const known = new Set(before.map(({ holder }) => `${ROOM}${holder?.token ?? ''}`));
  return before.every(({ verdict }) => verdict === 'over') && rooms.every((name) => known.has(name));
}

async function writeDraft(port: FilePort, room: string, path: string, holder: Holder): Promise<GrowingFile> {
  await port.makeFolder(room);
  const file = await port.grow(path);
  try {
    await writeAll(file, textOf(holder));
    await file.flush();
    return file;
  } catch (error) {
    await file.close().catch(() => undefined);
    await port.remove(room).catch(() => undefined);
    throw error;
  }
}

function textOf(holder: Holder): Buffer {
  return Buffer.from(`${JSON.stringify(holder)}\n`);
}

/** Null when the draft is not there any more. */
async function linkUnlessGone(port: FilePort, from: string, to: string): Promise<boolean | null> {
  try {
    return await port.link(from, to);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}

/** Moves a room away in one step, so that nothing in it can get a name any more, then removes it. */
async function clearAway(port: FilePort, room: string, to: string): Promise<void> {
  try {
    await port.rename(room, to);
  } catch (error) {
    if (codeOf(error) !== 'ENOENT') throw error;
  }
  await port.remove(to);
}

async function holding(
  port: FilePort,
  folder: string,
  path: string,
  draft: GrowingFile,
  mine: Holder,
  room: string,
): Promise<Pick<Taken, 'look' | 'successor' | 'beat' | 'release'>> {
  const head = textOf(mine);
  const identity = port.identity(folder);
  const shared = await port.shared(folder);
  let heart = draft;
  // A disk without links has a copy there.
  if (port.identity(path) !== draft.identity) {
    await draft.close();
    heart = await port.grow(path);
  }
  let lost = false;
  let beats = 0;
  const look = () => {
    if (lost) return 'lost';
    let found: Buffer | null;
    try {
      found = port.peek(path);
      if (found?.subarray(0, head.length).equals(head) === true) return 'held';
      if (port.identity(folder) !== identity) return 'away';
    } catch {
      return 'away';
    }
    lost = true;
    return 'lost';
  };
  return {
    look,
    async successor() {
      const others = await readLocks(port, folder).catch(() => []);
      return others.findLast(({ holder }) => holder?.token !== mine.token)?.holder ?? null;
    },
    async beat() {
      if (beats >= MOST_BEATS) await heart.truncate(head.length);
      beats = beats >= MOST_BEATS ? 1 : beats + 1;
      await writeAll(heart, BLANK);
      if (shared) await heart.flush();
    },
    async release() {
      heldHere.delete(path);
      await heart.close();
      if (look() !== 'held') return;
      await port.remove(room);
      await port.remove(path);
    },
  };
}

const BLANK = Buffer.from(' ');
