import type { JobProgress } from '../marks/mark.ts';
import { doneOf } from '../marks/stage-state.ts';
import type { Plan, SettingValue } from '../plan/plan.ts';

/** A setting that was cut already and no longer agrees with what was measured since. */
export interface Disagreement {
  readonly code: string;
  readonly door: string;
  readonly part: string;
  readonly stage: string;
  readonly place?: string;
  readonly name: string;
  readonly was: SettingValue;
  readonly now: SettingValue;
}

/** Everything that was cut by the plan of before and would be cut otherwise by the plan of now, by name. Both plans of one job. */
export function disagreements(before: Plan, now: Plan, progress: JobProgress): Disagreement[] {
  const doors = new Map(now.doors.map((door) => [door.door, door]));
  return before.doors.flatMap(({ door, parts }) =>
    parts.flatMap((part) => {
      const done = doneOf(progress, part.code);
      const later = doors.get(door)?.parts.find((each) => each.part === part.part);
      return part.stages
        .filter(({ stage }) => Object.hasOwn(done, stage))
        .flatMap(({ stage, settings, places = [] }) => {
          const other = later?.stages.find((each) => each.stage === stage);
          const where = { code: part.code, door, part: part.part, stage };
          return [
            ...changed(settings, other?.settings ?? {}).map((each) => ({ ...where, ...each })),
            ...places.flatMap(({ at, settings: own }) =>
              changed(own, other?.places?.find((each) => each.at === at)?.settings ?? {}).map((each) => ({
                ...where,
                place: at,
                ...each,
              })),
            ),
          ];
        });
    }),
  );
}

function changed(was: Readonly<Record<string, SettingValue>>, now: Readonly<Record<string, SettingValue>>) {
  return Object.entries(was).flatMap(([name, value]) => {
    const other = Object.hasOwn(now, name) ? now[name] : undefined;
    return other === value || other === undefined ? [] : [{ name, was: value, now: other }];
  });
}
