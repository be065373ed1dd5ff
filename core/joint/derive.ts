import type { BuiltSpec, MidRail } from '../job/job.ts';
import { trimOfSides } from '../job/trim-of-sides.ts';
import type { EachSide } from '../plan/each-side.ts';
import { half, larger, type Length, less, over, sign, smaller, sum, times } from '../length/length.ts';

/** What follows from a door's inputs before any member is looked at. All lengths exact, in the job's units. */
export interface Joint {
  readonly spec: BuiltSpec;
  /** Width and height as built, before trimming to the opening. */
  readonly builtWidth: Length;
  readonly builtHeight: Length;
  readonly finishedWidth: Length;
  readonly finishedHeight: Length;
  /** What comes off each side: half the oversize and that side's reveal. */
  readonly trim: EachSide<Length>;
  /** The larger of left and right, and of bottom and top: what must hold at either side holds there. */
  readonly trimEachSide: Length;
  readonly trimEachEnd: Length;
  /** Stock between a face and the centred groove. */
  readonly wall: Length;
  /** What is taken off each face of a tenon, so that it goes into the narrower of its stiles' grooves. */
  readonly cheek: Length;
  /** How far the bead lies below the face. */
  readonly fillet: Length;
  /** Width between the sight edges of the stiles. */
  readonly sightWidth: Length;
  /** Width of the narrower stile; both are alike unless they were measured. */
  readonly narrowStile: Length;
  readonly shoulderToShoulder: Length;
  readonly railLength: Length;
  readonly stileLength: Length;
  /** Width of the top rail at its ends: at the crown plus the rise. */
  readonly topRailEnds: Length;
  /** Heights between the sight edges of the rails, bottom to top, an arch's rise not counted. */
  readonly sightHeights: readonly Length[];
  /** Mid rails from the bottom up. */
  readonly midRails: readonly PlacedRail[];
  /** How far the panel enters its groove past the sight edge. */
  readonly panelHold: Length;
  readonly arc: Arc | null;
}

/** A mid rail, and which one of the job file's list it is, from 0. */
export interface PlacedRail extends MidRail {
  readonly index: number;
}

/** The arch of the top rail's sight edge. */
export interface Arc {
  readonly rise: Length;
  readonly flat: Length;
  readonly chord: Length;
  readonly radius: Length;
  /** The trammel's pivot, this far below the sight edge of the flats, on the rail's centre line. */
  readonly pivot: Length;
}

/** The door's arithmetic from its inputs. Refuses nothing: conditions are checked on what it gives. */
export function deriveJoint(spec: BuiltSpec): Joint {
  const { opening, oversize, reveal, bead, stile } = spec;
  const builtWidth = sum(opening.width, oversize.width);
  const builtHeight = sum(opening.height, oversize.height);
  const trim = trimOfSides({ oversize, reveal });
  const wall = half(less(spec.thickness, spec.groove.width));
  const sightWidth = less(builtWidth, stile.left, stile.right);
  const shoulderToShoulder = sum(sightWidth, times(bead, 2));
  const topRailEnds = spec.arch === null ? spec.topRail.width : sum(spec.topRail.width, spec.arch.rise);
  const midRails = spec.midRails
    .map((rail, index) => ({ ...rail, index }))
    .sort((a, b) => a.centre.compare(b.centre));
  return {
    spec,
    builtWidth,
    builtHeight,
    finishedWidth: less(opening.width, reveal.left, reveal.right),
    finishedHeight: less(opening.height, reveal.bottom, reveal.top),
    trim,
    trimEachSide: larger(trim.left, trim.right),
    trimEachEnd: larger(trim.bottom, trim.top),
    wall,
    cheek: half(less(spec.thickness, spec.stileGroove)),
    fillet: less(wall, bead),
    sightWidth,
    narrowStile: smaller(stile.left, stile.right),
    shoulderToShoulder,
    railLength: sum(shoulderToShoulder, times(spec.tenon.length, 2)),
    stileLength: sum(builtHeight, times(spec.horn, 2)),
    topRailEnds,
    sightHeights: sightHeights(spec.bottomRail.width, less(builtHeight, topRailEnds), midRails),
    midRails,
    panelHold: less(spec.groove.depth, spec.panel.clearance),
    arc:
      spec.arch === null
        ? null
        : arcOf(less(sightWidth, times(spec.arch.flat, 2)), spec.arch.rise, spec.arch.flat),
  };
}

function sightHeights(bottom: Length, top: Length, midRails: readonly MidRail[]): Length[] {
  const heights: Length[] = [];
  let below = bottom;
  for (const { width, centre } of midRails) {
    const halfWidth = half(width);
    heights.push(less(centre, halfWidth, below));
    below = sum(centre, halfWidth);
  }
  heights.push(less(top, below));
  return heights;
}

/** Radius from chord and rise: R = C²/(8h) + h/2. A rise of 0 gives no radius, so the chord stands in: the check refuses it. */
function arcOf(chord: Length, rise: Length, flat: Length): Arc {
  const radius = sign(rise) === 0 ? chord : sum(over(times(chord, chord), times(rise, 8)), half(rise));
  return { rise, flat, chord, radius, pivot: less(radius, rise) };
}
