import type { Health, Trouble } from '#core/api/office-api.ts';
import type { NetworkDesk } from '../network/network-desk.ts';
import type { BackupClock } from '../store/archive/backup-clock.ts';
import type { ElsewhereBackups } from '../store/archive/elsewhere.ts';
import type { Backups } from '../store/archive/backups.ts';
import type { FilePort } from '../store/files/file-port.ts';
import type { HeldFolder } from '../store/files/hold-folder.ts';
import type { PinStore } from '../store/documents/pin-store.ts';
import type { Store } from '../store/store.ts';

export interface HealthSources {
  readonly port: FilePort;
  readonly data: string;
  readonly version: string;
  readonly store: Store;
  readonly pin: PinStore;
  readonly backups: Backups;
  readonly elsewhere: Pick<ElsewhereBackups, 'troubles'>;
  readonly clock: BackupClock;
  readonly network: Pick<NetworkDesk, 'state'>;
  readonly held: Pick<HeldFolder, 'holder' | 'whyLost'>;
}

/** What everybody is told of, the PIN's file among it. */
export function troublesOf({
  store,
  pin,
  elsewhere,
}: Pick<HealthSources, 'store' | 'pin' | 'elsewhere'>): readonly Trouble[] {
  const shut: Trouble[] = pin.unreadable === null ? [] : [{ code: 'pin-unreadable', figures: {} }];
  return [...store.troubles, ...shut, ...elsewhere.troubles];
}

/** Enough for everybody: is it well, which program is it, how far is its log, and what is there to be told? */
export function briefHealth(sources: HealthSources): Health {
  const troubles = [...troublesOf(sources)];
  const { store, version, network } = sources;
  const { notReady } = store.jobs;
  return {
    ok: troubles.length === 0,
    version,
    seq: store.lastSeq,
    troubles,
    ...(notReady.length === 0 ? {} : { notReady: [...notReady] }),
    network: network.state,
  };
}

/** With it what the office looks at when something is wrong. */
export async function fullHealth(sources: HealthSources): Promise<Health> {
  const { port, data, store, backups, clock, held } = sources;
  const { scanned, strange, knewMore } = store.found;
  const { bytes, lines } = store.log.answered;
  const { pid, started, boot } = held.holder;
  const newest = await backups.list().catch(() => []);
  return {
    ...briefHealth(sources),
    more: {
      data,
      disk: await port.space(data).catch(() => null),
      log: {
        bytes,
        lines,
        trouble: store.log.trouble?.message ?? null,
        damaged: scanned.damaged.slice(0, 100).map((each) => ({ ...each })),
        torn: scanned.torn,
        strange,
        knewMore: [...knewMore],
      },
      aside: [...store.jobs.troubles, store.shop.trouble].filter((each) => each !== null),
      lastBackup: newest[0]?.at ?? null,
      backupTrouble: clock.trouble,
      lock: { pid, started, boot },
    },
  };
}
