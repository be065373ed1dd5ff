import { half, type Length, less, over, sum } from '../length/length.ts';
import { placeEnd, type PlaceName } from '../plan/place-name.ts';
import type { StageId } from '../stages/stage-id.ts';
import type { Joint } from './derive.ts';
import { type DraftOf, exact, plain, type PlaceDraft, usualStation } from './stage-draft.ts';
import type { Tooling } from './tooling.ts';

type Entries = PlaceDraft<'mortise'>['entries'];

/** A place of either stile: where it is, not yet how the stile lies for it. */
interface MeasuredPlace {
  readonly at: PlaceName;
  readonly entries: Omit<Entries, 'faceToFence' | 'endStop'>;
}

/**
 * A stile's mortises: depths from the bead's edge and from the groove floor; where each starts and stops, and against
 * which of two stops its end goes. The front runs along the fence at every place, so the right stile lies the other way.
 */
export function mortise(
  side: 'left' | 'right',
  joint: Joint,
  { chisel }: Tooling,
  after: StageId,
): DraftOf<'mortise'> {
  const { spec } = joint;
  const depth = sum(spec.bead, spec.tenon.length, spec.mortise.clearance);
  const figures = {
    bead: spec.bead,
    tenon: spec.tenon.length,
    clearance: spec.mortise.clearance,
    depth,
    groove: spec.groove.depth,
  };
  const fromFloor = less(depth, spec.groove.depth);
  return {
    kind: 'mortise',
    stage: 'mortise',
    station: usualStation('mortise'),
    after: [after],
    entries: {
      depthFromEdge: exact(depth, 'from.bead-edge', 'why.depthFromEdge', figures),
      depthFromGroove: exact(fromFloor, 'from.groove-floor', 'why.depthFromGroove', figures),
      chisel:
        chisel === null ? undefined : exact(chisel, 'from.none', 'why.chisel', { groove: spec.groove.width }),
      fence: chisel === null ? undefined : fence(spec.thickness, chisel),
    },
    places: [
      end('bottom', spec.bottomRail.width, joint, chisel),
      ...mids(joint, chisel),
      end('top', joint.topRailEnds, joint, chisel),
    ].map((each) => lying(side, each)),
  };
}

function fence(thickness: Length, chisel: Length) {
  const middle = half(less(thickness, chisel));
  return exact(middle, 'from.mortiser-fence', 'why.mortiser-fence', { thickness, chisel });
}

/** A place with how the stile lies for it: sight edge up, front to the fence, the end that it is measured from at its stop. */
function lying(side: 'left' | 'right', { at, entries }: MeasuredPlace): PlaceDraft<'mortise'> {
  const atLeft = (side === 'left') === (placeEnd(at) === 'bottom');
  return {
    at,
    entries: {
      ...entries,
      faceToFence: plain('front', 'from.chosen', 'why.faceToFence'),
      endStop: plain(atLeft ? 'left' : 'right', 'from.chosen', 'why.endStop', { end: placeEnd(at) }),
    },
  };
}

/** The mortise of an outer rail, from its own end of the stile. */
function end(at: 'bottom' | 'top', rail: Length, { spec }: Joint, chisel: Length | null) {
  const { horn, tenon, mortise: fit, bead: b } = spec;
  const figures = {
    horn,
    rail,
    bead: b,
    outer: tenon.outerSetback,
    inner: tenon.innerSetback,
    play: fit.endPlay,
  };
  const from = at === 'top' ? 'from.top-end' : 'from.bottom-end';
  return place(
    at,
    exact(less(sum(horn, tenon.outerSetback), fit.endPlay), from, 'why.mortise-start', figures),
    exact(less(sum(horn, rail, fit.endPlay), b, tenon.innerSetback), from, 'why.mortise-stop', figures),
    chisel,
  );
}

/** The mortises of the mid rails, each from the bottom end. */
function mids({ spec, midRails }: Joint, chisel: Length | null): MeasuredPlace[] {
  const { horn, tenon, mortise: fit, bead: b } = spec;
  const inset = less(sum(b, tenon.innerSetback), fit.endPlay);
  return midRails.map(({ width, centre }, k) => {
    const halfWidth = half(width);
    const figures = { horn, centre, half: halfWidth, bead: b, inner: tenon.innerSetback, play: fit.endPlay };
    const start = sum(horn, less(centre, halfWidth), inset);
    const stop = less(sum(horn, centre, halfWidth), inset);
    return place(
      `mid-${k + 1}`,
      exact(start, 'from.bottom-end', 'why.mortise-mid-start', figures),
      exact(stop, 'from.bottom-end', 'why.mortise-mid-stop', figures),
      chisel,
    );
  });
}

function place(
  at: PlaceName,
  start: Entries['start'],
  stop: Entries['stop'],
  chisel: Length | null,
): MeasuredPlace {
  const [from, to] = [start.value.value, stop.value.value];
  const long = less(to, from);
  return {
    at,
    entries: {
      start,
      stop,
      length: exact(long, 'from.mortise-start', 'why.mortise-length', {
        start: from,
        stop: to,
        length: long,
      }),
      plunges:
        chisel === null
          ? undefined
          : plain(over(long, chisel).ceil().valueOf(), 'from.counted', 'why.plunges', {
              length: long,
              chisel,
            }),
    },
  };
}
