import type { Note, Plan, PlanDoor, SettingValue } from './plan.ts';

/** A note in words, as it is printed: its figures are values and words. */
export interface PrintedNote extends Note {
  readonly message: string;
  readonly figures: Readonly<Record<string, SettingValue>>;
}

/** A door whose notes are in words. */
export interface PrintedDoor extends PlanDoor {
  readonly notes: readonly PrintedNote[];
}

/** A plan as it is printed: its notes are in words of one language. */
export interface PrintedPlan extends Plan {
  readonly doors: readonly PrintedDoor[];
}
