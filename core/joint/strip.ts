import { half, type Length, less, sum } from '../length/length.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';
import { type DraftOf, exact, irrational, plain, type PlaceDraft } from './stage-draft.ts';
import { CLEAR, type Tooling } from './tooling.ts';

/** The stopped rip that takes the bead away behind the rails, from each end to that end's shoulder line; after every mitre of the stile. */
export function strip(
  side: 'left' | 'right',
  width: Length,
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
  mitres: readonly DraftOf<'mitre-end'>[],
): DraftOf<'strip'> {
  const { horn, bead: b, bottomRail, thickness } = joint.spec;
  const fence = less(width, b);
  const rip = tooling.strip;
  const radius = half(profile.blade.diameter);
  const run = (at: 'bottom' | 'top', rail: Length): PlaceDraft<'strip'> => {
    const value = less(sum(horn, rail), b);
    const frontUp = (side === 'left') === (at === 'bottom');
    return {
      at,
      entries: {
        run: exact(value, at === 'top' ? 'from.top-end' : 'from.bottom-end', 'why.run', {
          horn,
          rail,
          bead: b,
          run: value,
        }),
        faceUp: plain(frontUp ? 'front' : 'back', 'from.chosen', 'why.faceUp'),
      },
    };
  };
  return {
    kind: 'strip',
    stage: 'strip',
    station: profile.stripStation,
    after: ['mortise', ...mitres.map(({ stage }) => stage)],
    entries: {
      fence: exact(fence, 'from.outer-edge', 'why.strip-fence', { width, bead: b, fence }),
      bladeHeight:
        rip === null
          ? undefined
          : exact(
              rip.bladeHeight,
              'from.table',
              rip.bladeHeight.equals(sum(thickness, CLEAR[profile.units]))
                ? 'why.bladeHeight'
                : 'why.bladeHeight-shop',
              { thickness, clear: CLEAR[profile.units] },
            ),
      reach:
        rip === null
          ? undefined
          : irrational(rip.reach, 'from.arbor', 'why.reach', { bladeHeight: rip.bladeHeight, radius }),
      lag:
        rip === null
          ? undefined
          : irrational(rip.lag, 'from.blade-front', 'why.lag', {
              bladeHeight: rip.bladeHeight,
              radius,
              thickness,
            }),
    },
    places: [run('bottom', bottomRail.width), run('top', joint.topRailEnds)],
  };
}
