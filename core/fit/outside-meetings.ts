import { half, less, sum, ZERO } from '../length/length.ts';
import { readPrinted } from '../length/read-printed.ts';
import type { Units } from '../length/units.ts';
import type { DoorParts } from '../plan/parts-of.ts';
import type { DoorValues } from '../plan/plan.ts';
import { stageNamed, stageOf } from '../plan/stage-of.ts';
import type { Meeting, Source } from './closure.ts';
import { landOf, placing, shoulderToShoulder, source } from './cut.ts';
import { landsOf } from './panel-meetings.ts';

/** What the door as built has over its finished size, both sides and both ends together: there must be something to trim. */
export function outsideMeetings(parts: DoorParts, values: DoorValues, units: Units): Meeting[] {
  const { stiles, rails } = parts;
  const across = shoulderToShoulder(rails.bottom, units);
  const [left, right] = [stiles.left, stiles.right].map((stile) => readPrinted(stile.width, units));
  const land = landOf(stiles.left, 'bottom', units).value;
  const width = less(sum(across.value, left ?? ZERO, right ?? ZERO), land, land);
  const lands = landsOf(parts, units);
  const byFence = lands.some(({ setting }) => setting === 'fence');
  const milled = [stiles.left, stiles.right].map((stile) => source(stile, 'mill', 'width', 'milling'));
  const meeting = (
    id: 'outside-width' | 'outside-height',
    room: Meeting['room'],
    all: Meeting['sources'],
  ): Meeting => ({
    id,
    part: id === 'outside-width' ? rails.bottom.part : stiles.left.part,
    room,
    least: ZERO,
    most: null,
    sources: all,
  });
  return [
    meeting('outside-width', less(width, readPrinted(values.finishedWidth, units)), [
      source(rails.bottom, 'mill', 'length', 'milling'),
      ...across.sources.filter(({ stage }) => stage !== 'mill'),
      // Ripped at a fence, a stile's outer part is as wide as the fence says, whatever its width.
      ...(byFence ? lands.filter(({ by }) => by === 'fence') : [...milled, ...lands]),
    ]),
    meeting('outside-height', less(builtHeight(parts, units), readPrinted(values.finishedHeight, units)), [
      source(stiles.left, 'mill', 'length', 'milling'),
      ...ends(parts),
    ]),
  ];
}

/** From the outer edge of the bottom rail to that of the top rail, where their mitres place them on a stile. */
function builtHeight({ stiles: { left }, rails }: DoorParts, units: Units): Meeting['room'] {
  const length = readPrinted(left.length, units);
  const heights = (['mitre-bottom', 'mitre-top'] as const).map((id) => stageNamed(left, id)?.settings);
  const [bottom, top] = heights.map((settings) =>
    settings !== undefined && 'sightEdge' in settings ? readPrinted(settings.sightEdge, units) : null,
  );
  if (bottom != null && top != null)
    return less(
      sum(length, readPrinted(rails.bottom.width, units), readPrinted(rails.top.width, units)),
      bottom,
      top,
    );
  // Without a bead each rail is placed by its tenon: its outer edge lies an outer height below where the tenon begins.
  const [tenonBottom, tenonTop] = [rails.bottom, rails.top].map((rail) => stageOf(rail, 'tenon')?.settings);
  const mortise = stageOf(left, 'mortise');
  const inset = (['bottom', 'top'] as const).map((at, k) => {
    const place = mortise?.places.find((each) => each.at === at)?.settings;
    const tenon = k === 0 ? tenonBottom : tenonTop;
    if (place === undefined || tenon?.outerHeight === undefined) return ZERO;
    const play = less(
      readPrinted(place.stop, units),
      readPrinted(place.start, units),
      readPrinted(tenon.width, units),
    );
    const begins = sum(readPrinted(place.start, units), half(play));
    return less(begins, readPrinted(tenon.outerHeight, units));
  });
  return less(length, inset[0] ?? ZERO, inset[1] ?? ZERO);
}

function ends({ stiles: { left }, rails }: DoorParts): Source[] {
  return [
    placing(left, 'mitre-bottom', 'bottom'),
    placing(left, 'mitre-top', 'top'),
    source(rails.bottom, 'mill', 'width', 'milling'),
    source(rails.top, 'mill', 'width', 'milling'),
  ];
}
