import { flatSettings, settingKey, settingsChanged } from './setting-key.ts';
import type { Waiting } from './waiting.ts';

/** All that waits for one and the same set-up. */
export interface Group {
  readonly key: string;
  readonly flat: ReadonlyMap<string, string>;
  readonly waiting: readonly [Waiting, ...Waiting[]];
  /** The earliest date for which one of them is wanted. */
  readonly due?: string;
  /** Settings to be touched when this group comes after the one before it. */
  readonly changes: number;
}

/**
 * Groups of identical setting, in the order in which to run them: from the set-up that stands on the machine now, each
 * time the group that touches the fewest settings; ties by due date, then by which waited first. With nothing set yet
 * the earliest due date comes first. Each group more is looked for among all that are left: a screen that shows the first
 * few asks for no more.
 */
export function queueGroups(
  waiting: readonly Waiting[],
  standing: ReadonlyMap<string, string> | null = null,
  most = Infinity,
): Group[] {
  const open = new Map<string, [Waiting, ...Waiting[]]>();
  for (const each of waiting) {
    const key = settingKey(each.units, each.stage);
    const group = open.get(key);
    if (group === undefined) open.set(key, [each]);
    else group.push(each);
  }
  const left = [...open].map(([key, members]) => {
    const due = earliest(members);
    return {
      key,
      flat: flatSettings(members[0].units, members[0].stage),
      waiting: members,
      ...(due === undefined ? {} : { due }),
    };
  });
  const ordered: Group[] = [];
  let from = standing;
  while (left.length > 0 && ordered.length < most) {
    const now = from;
    const changes = left.map(({ flat }) => (now === null ? 0 : settingsChanged(now, flat)));
    let best = 0;
    for (let k = 1; k < left.length; k += 1) {
      const [a, b] = [changes[k] ?? 0, changes[best] ?? 0];
      if (a < b || (a === b && dueBefore(left[k]?.due, left[best]?.due))) best = k;
    }
    const [taken] = left.splice(best, 1);
    if (taken === undefined) break;
    ordered.push({ ...taken, changes: changes[best] ?? 0 });
    from = taken.flat;
  }
  return ordered;
}

function earliest(waiting: readonly Waiting[]): string | undefined {
  let first: string | undefined;
  for (const { due } of waiting) if (dueBefore(due, first)) first = due;
  return first;
}

/** ISO dates; one without a date can wait. */
function dueBefore(a: string | undefined, b: string | undefined): boolean {
  return a !== undefined && (b === undefined || a < b);
}
