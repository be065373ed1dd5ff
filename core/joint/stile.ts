import { type Length, sign } from '../length/length.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';
import { bead, groove, mill } from './frame-stages.ts';
import { mortise } from './mortise.ts';
import { type DraftOf, exact, type PartDraft, type StageDraft, usualStation } from './stage-draft.ts';
import { notches, stileMitres } from './stile-mitres.ts';
import { strip } from './strip.ts';
import type { Tooling } from './tooling.ts';

/** Both stiles of a door: mirror images, so only the faces that lie up for the strip differ. */
export function stiles(
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
): readonly [PartDraft, PartDraft] {
  const shared = sharedStages(joint, tooling);
  return [stile('left', joint, tooling, profile, shared), stile('right', joint, tooling, profile, shared)];
}

function stile(
  side: 'left' | 'right',
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
  { worked, mitres, notches: notched }: Shared,
): PartDraft {
  const { spec } = joint;
  const width = spec.stile[side];
  const stages: StageDraft[] = [millStile(joint, width), ...worked, ...mitres, ...notched];
  if (sign(spec.bead) > 0)
    stages.push(strip(side, width, joint, tooling, profile, mitres), {
      kind: 'clean',
      stage: 'clean',
      station: usualStation('clean'),
      entries: {},
      after: ['strip', ...notched.map(({ stage }) => stage)],
    });
  return {
    part: `stile-${side}`,
    length: joint.stileLength,
    width,
    thickness: spec.thickness,
    stages,
  };
}

function millStile(joint: Joint, width: Length): StageDraft {
  return mill(
    joint.stileLength,
    width,
    joint.spec.thickness,
    { length: 'why.stile-length', width: 'why.member-width' },
    {
      length: { builtHeight: joint.builtHeight, horn: joint.spec.horn, length: joint.stileLength },
      width: { width },
    },
  );
}

/** What both stiles have alike after milling, up to their mitres and notches. */
interface Shared {
  readonly worked: readonly StageDraft[];
  readonly mitres: readonly DraftOf<'mitre-end'>[];
  readonly notches: readonly DraftOf<'notch'>[];
}

function sharedStages(joint: Joint, tooling: Tooling): Shared {
  const { spec } = joint;
  const beaded = sign(spec.bead) > 0;
  return {
    worked: [
      ...(beaded ? [bead(joint, 'mill')] : []),
      groove(joint, tooling, beaded ? 'bead' : 'mill'),
      mortise(joint, tooling),
      {
        kind: 'pare',
        stage: 'pare',
        station: usualStation('pare'),
        after: ['mortise'],
        entries: { width: exact(spec.groove.width, 'from.between', 'why.pare') },
      },
    ],
    mitres: beaded ? stileMitres(joint) : [],
    notches: beaded ? notches(joint) : [],
  };
}
