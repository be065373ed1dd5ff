import { half, type Length, less, sum, times, ZERO } from '../length/length.ts';
import type { Joint } from './derive.ts';
import type { StageId } from '../stages/stage-id.ts';
import { mitreOfEnd } from './frame-stages.ts';
import { type DraftOf, exact, plain, usualStation } from './stage-draft.ts';

interface Mid {
  readonly k: number;
  readonly centre: Length;
  readonly half: Length;
  readonly width: Length;
}

/** The mid rails as their cuts see them, from the bottom up. */
function midsOf({ midRails }: Joint): Mid[] {
  return midRails.map(({ width, centre }, k) => ({ k: k + 1, centre, half: half(width), width }));
}

/** A stile's mitres: those of its ends, then below and above each mid rail. */
export function stileMitres(joint: Joint, after: StageId): DraftOf<'mitre-end'>[] {
  const { horn, bead: b, bottomRail } = joint.spec;
  const mids = midsOf(joint);
  return [
    mitreOfEnd(
      'mitre-bottom',
      'bottom',
      {
        value: sum(horn, bottomRail.width),
        reason: 'why.mitre-bottom',
        figures: { horn, rail: bottomRail.width },
      },
      b,
      after,
    ),
    mitreOfEnd(
      'mitre-top',
      'top',
      {
        value: sum(horn, joint.topRailEnds),
        reason: 'why.mitre-top',
        figures: { horn, rail: joint.topRailEnds },
      },
      b,
      after,
    ),
    ...mids.map((mid) => below(mid, joint, after)),
    ...mids.map((mid) => above(mid, joint, after)),
  ];
}

function below(
  { k, centre, half: h }: Mid,
  { spec, builtHeight }: Joint,
  after: StageId,
): DraftOf<'mitre-end'> {
  const { horn, bead } = spec;
  const value = less(sum(horn, builtHeight, h), centre);
  const figures = { horn, builtHeight, centre, half: h };
  const sightEdge = { value, reason: 'why.mitre-mid-lower', figures } as const;
  return mitreOfEnd(`mitre-mid-${k}-lower`, 'top', sightEdge, bead, after);
}

function above({ k, centre, half: h }: Mid, { spec }: Joint, after: StageId): DraftOf<'mitre-end'> {
  const { horn, bead } = spec;
  const figures = { horn, centre, half: h };
  return mitreOfEnd(
    `mitre-mid-${k}-upper`,
    'bottom',
    { value: sum(horn, centre, h), reason: 'why.mitre-mid-upper', figures },
    bead,
    after,
  );
}

/** The notches behind a stile's mid rails, between the mitres of each. */
export function notches(joint: Joint): DraftOf<'notch'>[] {
  const { horn, bead: b } = joint.spec;
  return midsOf(joint).map(({ k, centre, half: h, width }) => {
    const figures = { horn, centre, half: h, bead: b };
    const from = sum(less(sum(horn, centre), h), b);
    const to = less(sum(horn, centre, h), b);
    return {
      kind: 'notch',
      stage: `notch-mid-${k}`,
      station: usualStation('notch'),
      after: ['mortise', `mitre-mid-${k}-lower`, `mitre-mid-${k}-upper`],
      entries: {
        fromEnd: plain('bottom', 'from.chosen', 'why.fromEnd'),
        from: exact(from, 'from.bottom-end', 'why.notch-from', figures),
        to: exact(to, 'from.bottom-end', 'why.notch-to', figures),
        length: exact(less(width, times(b, 2)), 'from.between', 'why.notch-length', { rail: width, bead: b }),
        height: exact(b, 'from.table', 'why.notch-height'),
      },
    };
  });
}

/** The notches behind a stile's outer rails, each from its own end to that end's shoulder line. */
export function endNotches({ spec, topRailEnds }: Joint): DraftOf<'notch'>[] {
  const { horn, bead, bottomRail } = spec;
  const notch = (end: 'bottom' | 'top', rail: Length): DraftOf<'notch'> => {
    const from = end === 'top' ? 'from.top-end' : 'from.bottom-end';
    const to = less(sum(horn, rail), bead);
    const shoulder = { horn, rail, bead, to };
    return {
      kind: 'notch',
      stage: `notch-${end}`,
      station: usualStation('notch'),
      after: ['mortise', `mitre-${end}`],
      entries: {
        fromEnd: plain(end, 'from.chosen', 'why.fromEnd'),
        from: exact(ZERO, from, 'why.notch-end-from'),
        to: exact(to, from, 'why.notch-end-to', shoulder),
        length: exact(to, 'from.between', 'why.notch-end-to', shoulder),
        height: exact(bead, 'from.table', 'why.notch-height'),
      },
    };
  };
  return [notch('bottom', bottomRail.width), notch('top', topRailEnds)];
}
