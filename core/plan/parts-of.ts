import { type PartName, readPart } from './part-name.ts';
import type { PlanDoor, PlanPart } from './plan.ts';

/** A door's parts by where they are, as seen from the front. */
export interface DoorParts {
  readonly stiles: { readonly left: PlanPart; readonly right: PlanPart };
  /** Mid rails from the bottom up. */
  readonly rails: { readonly bottom: PlanPart; readonly mids: readonly PlanPart[]; readonly top: PlanPart };
  /** From the bottom up. */
  readonly panels: readonly PlanPart[];
}

/** A door's parts by where they are. Throws where an outer part is missing: a broken plan. */
export function partsOf({ door, parts }: Pick<PlanDoor, 'door' | 'parts'>): DoorParts {
  const part = (name: PartName): PlanPart => {
    const found = parts.find((each) => each.part === name);
    if (found === undefined) throw new Error(`${door} has no ${name}`);
    return found;
  };
  return {
    stiles: { left: part('stile-left'), right: part('stile-right') },
    rails: {
      bottom: part('rail-bottom'),
      mids: parts.filter((each) => readPart(each).at === 'mid'),
      top: part('rail-top'),
    },
    panels: parts.filter((each) => readPart(each).kind === 'panel'),
  };
}
