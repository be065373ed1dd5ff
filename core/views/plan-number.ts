import type { PlanPart, PlanStage, SettingValue } from '../plan/plan.ts';

/** A printed value as a number to draw with: nearest double; 0 for a word. Only drawings may use it. */
export function drawn(value: SettingValue | undefined): number {
  if (typeof value === 'number') return value;
  const mixed = /^(-)?(?:(\d+) )?(\d+)\/(\d+)$/.exec(value ?? '');
  if (mixed !== null)
    return (mixed[1] === undefined ? 1 : -1) * (Number(mixed[2] ?? 0) + Number(mixed[3]) / Number(mixed[4]));
  return /^-?\d+(\.\d+)?$/.test(value ?? '') ? Number(value) : 0;
}

/** A stage of a part by name; undefined when the part has none. */
export function stageOf(part: PlanPart, ...names: readonly string[]): PlanStage | undefined {
  return part.stages.find(({ stage }) => names.includes(stage));
}

/** The cross-section that a frame member has in the end, from its own stages. 0 where it has none. */
export interface Profile {
  readonly width: number;
  readonly thickness: number;
  readonly length: number;
  readonly bead: number;
  readonly fillet: number;
  readonly wall: number;
  readonly grooveWidth: number;
  readonly grooveDepth: number;
}

/** The cross-section of a frame member from its printed plan; lengths in the job’s units, 0 where the part has no such cut. */
export function profileOf(part: PlanPart): Profile {
  const bead = stageOf(part, 'bead')?.settings;
  const groove = stageOf(part, 'groove', 'slot')?.settings;
  return {
    width: drawn(part.width),
    thickness: drawn(part.thickness),
    length: drawn(part.length),
    bead: drawn(bead?.bead ?? '0'),
    fillet: drawn(bead?.fillet ?? '0'),
    wall: drawn(groove?.fence ?? groove?.cutterHeight ?? '0'),
    grooveWidth: drawn(groove?.width ?? '0'),
    grooveDepth: drawn(groove?.depth ?? '0'),
  };
}
