import { z } from 'zod';
import { networkState } from './network-api.ts';

/** GET /session, POST /session, DELETE /session and PUT /pin answer this: is there a PIN, and may this screen do the office's work? */
export const sessionAnswer = z.object({ pin: z.boolean(), open: z.boolean() });
/** Whether the office is open to this browser. */
export type Session = z.infer<typeof sessionAnswer>;

const pin = z.string().regex(/^\d{4,12}$/);

/** POST /session takes this. */
export const sessionRequest = z.strictObject({ pin });

/** PUT /pin takes this; null takes the PIN away. */
export const pinUpdate = z.strictObject({ pin: pin.nullable() });

const backup = z.object({ name: z.string(), at: z.string(), bytes: z.number() });

/** GET /backups answers this, the newest first. */
export const backupsAnswer = z.object({ backups: z.array(backup) });

/** GET and PUT /backups/elsewhere answer this: the folder off this machine, why it cannot be used just now, and what lies there. */
export const elsewhereAnswer = z.object({
  folder: z.string().nullable(),
  trouble: z.string().nullable(),
  /** Of when the newest backup there is. */
  last: z.string().nullable(),
  backups: z.array(backup),
});

/** PUT /backups/elsewhere takes this; null names none. */
export const elsewhereUpdate = z.strictObject({ folder: z.string().min(1).max(400).nullable() });

/** POST /backups answers this. It has been read back. */
export const backupMade = backup.extend({ jobs: z.number(), entries: z.number() });

/** POST /backups/:name/restore and POST /import answer this: what is in place now, and the backup of what was before. */
export const restoredAnswer = z.object({
  jobs: z.number(),
  entries: z.number(),
  made: z.string(),
  before: z.string(),
  /** Were the network's keys and devices among it? */
  network: z.boolean(),
});

/** POST /backups, POST /backups/:name/restore and POST /kiosk/leave take this. */
export const nothing = z.strictObject({});

/** POST /kiosk/leave answers this. */
export const leftAnswer = z.object({ left: z.literal(true) });

/** What may be missing, damaged or in the way of recording, by its stable code. */
export const TROUBLES = [
  'cannot-write',
  'log-gone',
  'log-shorter',
  'log-damaged',
  'jobs-gone',
  'job-unreadable',
  'plan-damaged',
  'plan-lost',
  'shop-gone',
  'shop-unreadable',
  'pin-unreadable',
  'pin-gone',
  'record-gone',
  'record-unreadable',
  'backup-gone',
  'backup-late',
] as const;

/** Something that everybody is told of, on every screen: its code, and the figures for its words. */
export const trouble = z.object({
  code: z.enum(TROUBLES),
  figures: z.record(z.string(), z.union([z.string(), z.number()])),
});
export type Trouble = z.infer<typeof trouble>;

/** POST /troubles/known answers this: how many were told until now. */
export const troublesKnown = z.object({ known: z.number() });

/**
 * What an event of the kind "beat" holds: the last number, and whether the hub is well; a tag of the list of jobs, of the
 * shop, and of the screens that are served, each another one whenever what it stands for is another.
 */
export const beat = z.object({
  seq: z.number(),
  ok: z.boolean().optional(),
  jobs: z.string().optional(),
  shop: z.string().optional(),
  screens: z.string().optional(),
  /** The first of a stream says from where on marks are told: from the one asked for (resumed), or from the last there is. */
  greeting: z
    .object({ resumed: z.boolean(), last: z.object({ seq: z.number(), mark: z.string() }).nullable() })
    .optional(),
});
export type Beat = z.infer<typeof beat>;

/** GET /health answers this; `more` only to the office. Well (ok) is a hub with nothing to tell of. */
export const healthAnswer = z.object({
  ok: z.boolean(),
  version: z.string(),
  seq: z.number(),
  troubles: z.array(trouble),
  /** Jobs that cannot be used yet, since their plan is being made; left out where all can. */
  notReady: z.array(z.string()).exactOptional(),
  /** How it stands with the shop's network. */
  network: networkState.optional(),
  more: z
    .object({
      data: z.string(),
      disk: z.object({ free: z.number(), total: z.number() }).nullable(),
      log: z.object({
        bytes: z.number(),
        lines: z.number(),
        trouble: z.string().nullable(),
        damaged: z.array(z.object({ line: z.number(), byte: z.number(), saved: z.number() })),
        torn: z.number(),
        strange: z.number(),
        /** Files kept aside that knew entries which the log has lost. */
        knewMore: z.array(z.string()),
      }),
      aside: z.array(z.object({ file: z.string(), reason: z.string(), kept: z.string() })),
      lastBackup: z.string().nullable(),
      backupTrouble: z.string().nullable(),
      lock: z.object({ pid: z.number(), started: z.string(), boot: z.string() }),
    })
    .optional(),
});
/** What the hub says of itself. */
export type Health = z.infer<typeof healthAnswer>;
