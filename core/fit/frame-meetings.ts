import { half, length, type Length, less, sign, sum, times, ZERO } from '../length/length.ts';
import { limitsFor } from '../length/limits.ts';
import { readPrinted } from '../length/read-printed.ts';
import type { Units } from '../length/units.ts';
import { leftToPare } from '../plan/left-to-pare.ts';
import { readPart } from '../plan/part-name.ts';
import type { DoorParts } from '../plan/parts-of.ts';
import type { PlaceName } from '../plan/place-name.ts';
import type { PlanPart } from '../plan/plan.ts';
import { stageNamed, stageOf, stagesOf } from '../plan/stage-of.ts';
import type { Meeting } from './closure.ts';
import {
  BY_HALF,
  grooveOf,
  landOf,
  mortiseAt,
  ONCE,
  shoulderToShoulder,
  source,
  stopOf,
  TWICE,
} from './cut.ts';

/** A gap at a shoulder that is seen: common practice, no source. */
const SEEN: Readonly<Record<Units, Length>> = { in: length(1, 64), mm: length(2, 5) };

/** The rails from the bottom up, each with its place on the stiles. */
export function railsOf({ rails }: DoorParts): { readonly rail: PlanPart; readonly at: PlaceName }[] {
  return [
    { rail: rails.bottom, at: 'bottom' },
    ...rails.mids.map((rail) => {
      const read = readPart(rail);
      return { rail, at: read.at === 'mid' ? (`mid-${read.k}` as const) : ('top' as const) };
    }),
    { rail: rails.top, at: 'top' },
  ];
}

/** All that meets where the rails meet the stiles. */
export function frameMeetings(parts: DoorParts, units: Units): Meeting[] {
  return [
    ...shoulders(parts, units),
    ...railsOf(parts).flatMap(({ rail, at }) => [
      ...tenonInGroove(rail, parts.stiles.left, units),
      ...tenonEnds(rail, parts.stiles.left, at, units),
      ...mortiseFloor(rail, parts.stiles.left, at, units),
      ...haunch(rail, parts.stiles.left, at, units),
    ]),
    ...mitres(parts, units),
    ...midMitres(parts, units),
  ];
}

/** A shorter rail's shoulders stand off from the stiles by half of what it lacks. Rails are shouldered at one stop, so that its own ± moves all alike. */
function shoulders(parts: DoorParts, units: Units): Meeting[] {
  const rails = railsOf(parts)
    .map(({ rail }) => ({ rail, length: shoulderToShoulder(rail, units).value }))
    .sort((a, b) => a.length.compare(b.length));
  const [shortest, longest] = [rails[0], rails.at(-1)];
  if (shortest === undefined || longest === undefined) return [];
  const both = [source(shortest.rail, 'mill', 'length', 'milling', BY_HALF)] as const;
  return [
    {
      id: 'shoulders',
      part: shortest.rail.part,
      room: half(less(longest.length, shortest.length)),
      least: null,
      most: SEEN[units],
      sources: [...both, source(longest.rail, 'mill', 'length', 'milling', BY_HALF)],
    },
  ];
}

/**
 * How loose a tenon is in its groove. A tight one is planed, a loose one is lost: only that side has a limit. Groove and
 * tenon are each what two walls leave of one thickness; stock that is a hair thick or thin stays self-fitting, but where
 * a slot cutter makes the groove.
 */
function tenonInGroove(rail: PlanPart, stile: PlanPart, units: Units): Meeting[] {
  const [cheek, groove, slot] = [stageOf(rail, 'cheek'), stageOf(stile, 'groove'), stageOf(stile, 'slot')];
  if (cheek === undefined) return [];
  const height = source(rail, 'cheek', 'height', 'height', TWICE);
  const wide = groove?.settings.width ?? slot?.settings.width ?? cheek.settings.thickness;
  return [
    {
      id: 'tenon-groove',
      part: rail.part,
      room: less(readPrinted(wide, units), readPrinted(cheek.settings.thickness, units)),
      least: null,
      most: times(limitsFor(units).hair, 2),
      sources: [
        height,
        groove === undefined
          ? source(rail, 'mill', 'thickness', 'milling')
          : source(stile, 'groove', 'fence', 'fence', TWICE),
      ],
    },
  ];
}

/** The play of a tenon between the ends of its mortise, both ends together. */
function tenonEnds(rail: PlanPart, stile: PlanPart, at: PlaceName, units: Units): Meeting[] {
  const [tenon, mortise] = [stageOf(rail, 'tenon'), mortiseAt(stile, at, units)];
  if (tenon === undefined || mortise === undefined) return [];
  const inner = source(rail, 'tenon', 'innerHeight', 'height', at.startsWith('mid') ? TWICE : ONCE);
  return [
    {
      id: 'tenon-ends',
      part: rail.part,
      room: less(mortise.stop, mortise.start, readPrinted(tenon.settings.width, units)),
      least: ZERO,
      most: null,
      sources: [
        source(stile, 'mortise', 'stop', 'stop', ONCE, at),
        source(stile, 'mortise', 'start', 'stop', ONCE, at),
        inner,
        ...(at.startsWith('mid') ? [] : [source(rail, 'tenon', 'outerHeight', 'height')]),
        source(rail, 'mill', 'width', 'milling'),
      ],
    },
  ];
}

/** The room between a tenon's end and the floor of its mortise. */
function mortiseFloor(rail: PlanPart, stile: PlanPart, at: PlaceName, units: Units): Meeting[] {
  const mortise = mortiseAt(stile, at, units);
  if (mortise === undefined) return [];
  const [land, stop] = [landOf(stile, at, units), stopOf(rail, units)];
  return [
    {
      id: 'mortise-floor',
      part: rail.part,
      room: less(mortise.depth, land.value, stop.value),
      least: ZERO,
      most: null,
      sources: [source(stile, 'mortise', 'depthFromEdge', 'height'), ...stop.sources, ...land.sources],
    },
  ];
}

/** The room between a haunch and the floor of its groove. What the saw leaves too long of it, the chisel takes at the bench. */
function haunch(rail: PlanPart, stile: PlanPart, at: PlaceName, units: Units): Meeting[] {
  const stage = stageOf(rail, 'haunch');
  if (stage === undefined) return [];
  const long = readPrinted(stage.settings.length, units);
  if (sign(long) === 0) return [];
  const [groove, land] = [grooveOf(stile, units), landOf(stile, at, units)];
  return [
    {
      id: 'haunch',
      part: rail.part,
      room: less(groove.value, land.value, long),
      least: ZERO,
      most: null,
      sources: [source(stile, groove.sources[0]?.stage ?? 'groove', 'depth', 'height'), ...land.sources],
    },
  ];
}

/** The wood that a mitre's cut leaves for the chisel, which takes it to the line. */
function mitres({ stiles, rails }: DoorParts, units: Units): Meeting[] {
  const cuts = [
    ...stagesOf(stiles.left, 'mitre-end')
      .filter(({ stage }) => stage === 'mitre-bottom' || stage === 'mitre-top')
      .map((stage) => ({ part: stiles.left, stage })),
    ...[rails.bottom, ...rails.mids, rails.top].flatMap((part) =>
      stagesOf(part, 'mitre').map((stage) => ({ part, stage })),
    ),
  ];
  return cuts.map(({ part, stage: { stage, settings } }) => ({
    id: 'mitres',
    part: part.part,
    room: shareOf(stage, settings.sightEdge, units),
    least: ZERO,
    most: null,
    sources: [source(part, stage, 'sightEdge', 'stop')],
  }));
}

function shareOf(stage: string, sightEdge: string, units: Units): Length {
  const pare = leftToPare(stage, 'sightEdge', sightEdge, units);
  return pare === null ? ZERO : readPrinted(pare.share, units);
}

/**
 * The wood that is left to fit a mid rail between its two mitres on a stile. They are measured from the stile's two ends, so
 * that its length counts, and so does the rail's width.
 */
function midMitres({ stiles: { left }, rails }: DoorParts, units: Units): Meeting[] {
  return rails.mids.flatMap((rail, k): Meeting[] => {
    const [lower, upper] = (['lower', 'upper'] as const).map((side) =>
      stagesOf(left, 'mitre-end').find(({ stage }) => stage === `mitre-mid-${k + 1}-${side}`),
    );
    if (lower === undefined || upper === undefined || stageNamed(left, lower.stage) === undefined) return [];
    const below = less(readPrinted(left.length, units), readPrinted(lower.settings.sightEdge, units));
    const opening = less(readPrinted(upper.settings.sightEdge, units), below);
    const shares = sum(
      shareOf(lower.stage, lower.settings.sightEdge, units),
      shareOf(upper.stage, upper.settings.sightEdge, units),
    );
    return [
      {
        id: 'mid-mitres',
        part: rail.part,
        room: less(sum(readPrinted(rail.width, units), shares), opening),
        least: ZERO,
        most: null,
        sources: [
          source(left, lower.stage, 'sightEdge', 'stop'),
          source(left, upper.stage, 'sightEdge', 'stop'),
          source(left, 'mill', 'length', 'milling'),
          source(rail, 'mill', 'width', 'milling'),
        ],
      },
    ];
  });
}
