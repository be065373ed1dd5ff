import { type Length, sign } from '../length/length.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Joint } from './derive.ts';
import { bead, groove, mill } from './frame-stages.ts';
import { mortise } from './mortise.ts';
import { type DraftOf, exact, type PartDraft, type StageDraft, usualStation } from './stage-draft.ts';
import type { StageId } from '../stages/stage-id.ts';
import { endNotches, notches, stileMitres } from './stile-mitres.ts';
import { strip } from './strip.ts';
import type { Tooling } from './tooling.ts';

/** Both stiles of a door: mirror images, so only the faces that lie up for the strip differ. */
export function stiles(
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
): readonly [PartDraft, PartDraft] {
  const shared = sharedStages(joint, tooling, profile);
  return [stile('left', joint, tooling, profile, shared), stile('right', joint, tooling, profile, shared)];
}

function stile(
  side: 'left' | 'right',
  joint: Joint,
  tooling: Tooling,
  profile: ShopProfile,
  { sticking, grooved, pared, mitres, notches: notched }: Shared,
): PartDraft {
  const { spec } = joint;
  const width = spec.stile[side];
  const stages: StageDraft[] = [
    millStile(joint, width),
    ...sticking,
    mortise(side, joint, tooling, grooved),
    pared,
    ...mitres,
  ];
  if (sign(spec.bead) > 0) {
    const stripped =
      profile.ways.strip === 'rip'
        ? [...notched, strip(side, width, joint, tooling, profile, mitres)]
        : [...endNotches(joint), ...notched];
    stages.push(...stripped, {
      kind: 'clean',
      stage: 'clean',
      station: usualStation('clean'),
      entries: {},
      after: stripped.map(({ stage }) => stage).toSorted(ripFirst),
    });
  }
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

/** What the rip leaves is pared after it, as plans have always said first. */
function ripFirst(a: StageId, b: StageId): number {
  return Number(b === 'strip') - Number(a === 'strip');
}

/** What both stiles have alike. */
interface Shared {
  /** After milling: bead and groove. */
  readonly sticking: readonly StageDraft[];
  /** The stage that makes the groove. */
  readonly grooved: StageId;
  readonly pared: DraftOf<'pare'>;
  readonly mitres: readonly DraftOf<'mitre-end'>[];
  readonly notches: readonly DraftOf<'notch'>[];
}

function sharedStages(joint: Joint, tooling: Tooling, profile: ShopProfile): Shared {
  const { spec } = joint;
  const beaded = sign(spec.bead) > 0;
  const grooved = groove(joint, tooling, profile, beaded ? 'bead' : 'mill');
  return {
    sticking: beaded ? [bead(joint, 'mill'), grooved] : [grooved],
    grooved: grooved.stage,
    pared: {
      kind: 'pare',
      stage: 'pare',
      station: usualStation('pare'),
      after: ['mortise'],
      entries: { width: exact(spec.groove.width, 'from.between', 'why.pare') },
    },
    mitres: beaded ? stileMitres(joint, grooved.stage) : [],
    notches: beaded ? notches(joint) : [],
  };
}
