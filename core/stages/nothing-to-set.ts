import { kindOf } from './stage-id.ts';
import type { StageFacts } from './stage-facts.ts';
import { factsOf } from './table.ts';

/** What is said where nothing is set at a stage; undefined where there is nothing of its own to say. */
export function nothingToSet(stage: string): StageFacts['nothingToSet'] {
  const kind = kindOf(stage);
  return kind === null ? undefined : factsOf(kind).nothingToSet;
}
