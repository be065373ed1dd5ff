import type { AcceptedMark } from '#core/marks/mark.ts';
import type { Printed } from '../folded/print-record.ts';
import { migrate } from '../files/migration.ts';

/** The newest form of the log's entries that this version knows. A log says its form in an entry of its own. */
export const LOG_FORMAT = 2;

/** What the log holds: something that happened, in the form in which it was answered. */
export type LogEntry =
  | { readonly kind: 'format'; readonly format: number; readonly version: string; readonly at: string }
  | { readonly kind: 'mark'; readonly mark: Omit<AcceptedMark, 'seq'> }
  | { readonly kind: 'print'; readonly print: Printed }
  | { readonly kind: 'restored'; readonly from: string; readonly at: string };

const KINDS: ReadonlySet<unknown> = new Set(['format', 'mark', 'print', 'restored']);

/** Steps from one form of the entries to the next. Format 1 knew marks alone, written as they are now. */
const STEPS = { 1: (entry: unknown) => entry };

/**
 * An entry of a given form as this version's. Its line's checksum held, so its insides are as some version wrote them;
 * null for a kind that no version up to this one wrote.
 */
export function readEntry(entry: unknown, format: number): LogEntry | null {
  const now = migrate(entry, format, LOG_FORMAT, STEPS);
  return typeof now === 'object' && now !== null && 'kind' in now && KINDS.has(now.kind)
    ? (now as LogEntry)
    : null;
}
