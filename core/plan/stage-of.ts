import { isOfKind, type StageId } from '../stages/stage-id.ts';
import type { PlacedKind, StageKind } from '../stages/table.ts';
import type { PlaceName } from './place-name.ts';
import type { PlaceOf, PlanStage, StageOf } from './plan.ts';

/** Is this a stage of that kind? */
export function isStageOf<K extends StageKind>(stage: PlanStage, kind: K): stage is StageOf<K> & PlanStage {
  return isOfKind(stage.stage, kind);
}

interface Staged {
  readonly stages: readonly PlanStage[];
}

/** The first stage of a kind that a part or a door has; undefined when it has none. */
export function stageOf<K extends StageKind>({ stages }: Staged, kind: K): StageOf<K> | undefined {
  return stages.find((each): each is StageOf<K> & PlanStage => isStageOf(each, kind));
}

/** All stages of a kind that a part has, in their order: a stile's mitres, the notches of its mid rails. */
export function stagesOf<K extends StageKind>({ stages }: Staged, kind: K): StageOf<K>[] {
  return stages.filter((each): each is StageOf<K> & PlanStage => isStageOf(each, kind));
}

/** A stage by its id. */
export function stageNamed({ stages }: Staged, id: StageId): PlanStage | undefined {
  return stages.find(({ stage }) => stage === id);
}

/** What is set at a place of a stage; at the first one where it has none of that name. Undefined where it has none at all. */
export function placeOf<K extends PlacedKind>(
  { places }: Placed<K>,
  name?: PlaceName,
): PlaceOf<K> | undefined {
  return places.find(({ at }) => at === name) ?? places[0];
}

interface Placed<K extends PlacedKind> {
  readonly places: readonly PlaceOf<K>[];
}
