import type { PlanStage, SettingValue } from '#core/plan/plan.ts';

/** A stage as its JSON has it, for tests that look at whatever is printed. */
export interface LooseStage {
  readonly stage: string;
  readonly station: string;
  readonly settings: Readonly<Record<string, SettingValue>>;
  readonly places?: readonly LoosePlace[];
  readonly after: readonly string[];
}

/** A place of such a stage. */
export interface LoosePlace {
  readonly at: string;
  readonly settings: Readonly<Record<string, SettingValue>>;
}

/** The first of these stages that is called so. */
export function looseStage(
  { stages }: { readonly stages: readonly PlanStage[] },
  name: string,
): LooseStage | undefined {
  const all: readonly LooseStage[] = stages;
  return all.find(({ stage }) => stage === name);
}
