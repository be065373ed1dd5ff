import { type Length, length, less, sign, sum } from '../length/length.ts';
import { parseLength } from '../length/parse-length.ts';
import { isPrintedLength, printLength } from '../length/print-length.ts';
import type { PareKind } from '../stages/setting.ts';
import { settingFacts } from './set-or-follows.ts';
import type { SettingValue } from './plan.ts';
import type { Units } from '../length/units.ts';

/** Where a machine is set so that something is left to pare or to sand, as printed lengths. */
export interface LeftToPare {
  /** What the machine is set to. */
  readonly set: string;
  /** How much is left: always above zero. */
  readonly share: string;
  readonly kind: PareKind;
}

const CHISEL: Readonly<Record<Units, Length>> = { in: length(1, 64), mm: length(2, 5) };
const SANDING: Readonly<Record<Units, Length>> = { in: length(1, 32), mm: length(4, 5) };

/**
 * What to set the machine to for a setting of a plan, whose own values are net: where the line is. A mitre's sight edge
 * is set 1/64 in (0.4 mm) nearer the end, the strip's fence 1/64 farther off, its stop 1/64 early: the chisel pares to
 * the line. An arch is sawn at its radius less 1/32 (0.8 mm), since the rail keeps the outside, a panel's head at its
 * radius and 1/32; both are sanded to the line. The pivot stays. Exact; in the job's units. Null for every other
 * setting, shoulders among them, which are cut to the line, and where nothing above zero would be left to set.
 */
export function leftToPare(
  stage: string,
  name: string,
  value: SettingValue,
  units: Units,
): LeftToPare | null {
  const kind = settingFacts(stage, name)?.pared;
  if (kind === undefined || typeof value !== 'string' || !isPrintedLength(value)) return null;
  const read = parseLength(value, units);
  if (!read.ok) return null;
  const share = (kind === 'arch' || kind === 'cutout' ? SANDING : CHISEL)[units];
  const set = kind === 'fence' || kind === 'cutout' ? sum(read.value, share) : less(read.value, share);
  return sign(set) > 0 ? { set: printLength(set), share: printLength(share), kind } : null;
}
