import type { SettingValue } from '../plan/plan.ts';

/** A printed value as a number to draw with: nearest double. Only drawings may use it. Throws where it is none. */
export function drawn(value: SettingValue): number {
  if (typeof value === 'number') return value;
  const mixed = /^(-)?(?:(\d+) )?(\d+)\/(\d+)$/.exec(value);
  if (mixed !== null)
    return (mixed[1] === undefined ? 1 : -1) * (Number(mixed[2] ?? 0) + Number(mixed[3]) / Number(mixed[4]));
  if (!/^-?\d+(\.\d+)?$/.test(value))
    throw new Error(`a drawing needs a number; got ${JSON.stringify(value)}`);
  return Number(value);
}
