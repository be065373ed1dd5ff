import { less, type Length, sum, ZERO } from '../length/length.ts';
import { readPrinted } from '../length/read-printed.ts';
import type { Units } from '../length/units.ts';
import type { DoorParts } from '../plan/parts-of.ts';
import type { DoorValues, PlanPart } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import type { Meeting, Source } from './closure.ts';
import { added, counted, grooveOf, landOf, ONCE, placing, shoulderToShoulder, source, TWICE } from './cut.ts';
import { railsOf } from './frame-meetings.ts';

/** Each panel between the floors of its grooves: free at both sides, and held at the far one when it lies against the other. */
export function panelMeetings(parts: DoorParts, values: DoorValues, units: Units): Meeting[] {
  const rails = railsOf(parts);
  return parts.panels.flatMap((panel, k) => {
    const [below, above] = [rails[k], rails[k + 1]];
    const sightHeight = values.sightHeights[k];
    if (below === undefined || above === undefined || sightHeight === undefined) return [];
    return [
      across(panel, parts, readPrinted(values.sightWidth, units), units),
      along(panel, parts, [below, above], readPrinted(sightHeight, units), units),
    ];
  });
}

/** Room from floor to floor, less what the panel takes of it. It may not be more than a groove is deep: then it falls out. */
function meeting(
  id: 'panel-width' | 'panel-length',
  panel: PlanPart,
  open: Length,
  size: Length,
  grooves: readonly [Length, Length],
  sources: readonly [Source, ...Source[]],
): Meeting {
  const [one, other] = grooves;
  return {
    id,
    part: panel.part,
    room: less(sum(open, one, other), size),
    least: ZERO,
    most: one.compare(other) <= 0 ? one : other,
    sources,
  };
}

function across(panel: PlanPart, { stiles, rails }: DoorParts, open: Length, units: Units): Meeting {
  const [left, right] = [grooveOf(stiles.left, units), grooveOf(stiles.right, units)];
  return meeting(
    'panel-width',
    panel,
    open,
    readPrinted(panel.width, units),
    [left.value, right.value],
    [
      source(panel, 'mill', 'width', 'milling'),
      ...shoulderToShoulder(rails.bottom, units).sources,
      ...counted(left.sources, TWICE),
      ...landsOf({ stiles }, units),
    ],
  );
}

/** Both lands: cut at one setting, from two stiles. */
export function landsOf({ stiles }: Pick<DoorParts, 'stiles'>, units: Units): Source[] {
  const sources = landOf(stiles.left, 'bottom', units).sources;
  return sources.flatMap((each) =>
    each.by === 'milling' ? [each, { ...each, part: stiles.right.part }] : counted([each], TWICE),
  );
}

function along(
  panel: PlanPart,
  { stiles: { left } }: DoorParts,
  [below, above]: readonly [ReturnType<typeof railsOf>[number], ReturnType<typeof railsOf>[number]],
  open: Length,
  units: Units,
): Meeting {
  const cutout = stageOf(panel, 'cutout');
  const [low, high] = [grooveOf(below.rail, units), grooveOf(above.rail, units)];
  const alike = low.sources[0]?.stage === high.sources[0]?.stage && added(low).compare(added(high)) === 0;
  const size = cutout === undefined ? panel.length : cutout.settings.sideHeight;
  return meeting(
    'panel-length',
    panel,
    open,
    readPrinted(size, units),
    [low.value, high.value],
    [
      cutout === undefined
        ? source(panel, 'mill', 'length', 'milling')
        : source(panel, 'cutout', 'sideHeight', 'milling'),
      placing(left, below.at === 'bottom' ? 'mitre-bottom' : mid(below.at, 'upper'), below.at),
      placing(left, above.at === 'top' ? 'mitre-top' : mid(above.at, 'lower'), above.at),
      source(left, 'mill', 'length', 'milling'),
      ...(alike ? counted(low.sources, TWICE) : [...counted(low.sources, ONCE), ...high.sources]),
    ],
  );
}

function mid(at: string, side: 'lower' | 'upper'): `mitre-mid-${number}-${'lower' | 'upper'}` {
  return `mitre-mid-${Number(at.slice('mid-'.length))}-${side}`;
}
