import type { Plan, PlanDoor, PlanPart, PlanStage } from '#core/plan/plan.ts';
import type { StickerPlace } from '#core/stickers/sticker-place.ts';
import { placeWords } from '#core/stickers/sticker-place.ts';
import { partName } from '#core/words/names.ts';
import { say } from '#core/words/say.ts';

/** What stands on one part's sticker, before it is laid out. All numbers as the plan prints them. */
export interface StickerText {
  readonly code: string;
  readonly job: string;
  readonly mark: string;
  readonly part: string;
  readonly size: string;
  /** One note each; the sticker breaks lines only between and inside them, never drops one. */
  readonly notes: readonly string[];
}

/** How many doors of each mark the plan has, told once for a whole job. */
export function countMarks(plan: Plan): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { mark } of plan.doors) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  return counts;
}

/** Which door of its mark: "2 of 3". */
export function whichOf(k: string, n: number): string {
  return say('paper.of', { k, n });
}

/** The words and numbers of a part's sticker. */
export function stickerText(plan: Plan, door: PlanDoor, part: PlanPart, place: StickerPlace): StickerText {
  return {
    code: part.code,
    job: plan.job,
    mark: door.mark,
    part: partName(part.part),
    size: say('paper.size', { length: part.length, width: part.width, thickness: part.thickness }),
    notes: [
      ...(part.part.startsWith('panel')
        ? panelNotes(part)
        : [...edgeNotes(part), ...(part.part.startsWith('stile') ? stileNotes(part) : railNotes(part))]),
      placeWords(part, place, plan.units),
    ],
  };
}

function stageOf(part: PlanPart, ...names: readonly string[]): PlanStage | undefined {
  return part.stages.find(({ stage }) => names.includes(stage));
}

function edgeNotes(part: PlanPart): string[] {
  const bead = stageOf(part, 'bead');
  const groove = stageOf(part, 'groove', 'slot');
  return [
    bead === undefined ? say('paper.no-bead') : say('paper.bead', bead.settings),
    ...(groove === undefined ? [] : [say('paper.groove', groove.settings)]),
  ];
}

function stileNotes(part: PlanPart): string[] {
  const mortise = stageOf(part, 'mortise');
  if (mortise === undefined) return [];
  const places = (mortise.places ?? []).map(({ at, settings }) =>
    say('paper.mortise', { place: shortPlace(at), ...settings }),
  );
  return [say('paper.mortises', { depth: mortise.settings.depthFromEdge ?? '', places: places.join(', ') })];
}

function shortPlace(at: string): string {
  const mid = /^mid-(\d+)$/.exec(at)?.[1];
  if (mid !== undefined) return say('paper.place-mid', { k: mid });
  return at === 'top' ? say('paper.place-top') : say('paper.place-bottom');
}

function railNotes(part: PlanPart): string[] {
  const notes: string[] = [];
  const tenon = stageOf(part, 'tenon');
  const shoulder = stageOf(part, 'shoulder');
  const haunch = stageOf(part, 'haunch');
  const mitre = stageOf(part, 'mitre');
  const arch = stageOf(part, 'arch');
  if (tenon !== undefined && shoulder !== undefined)
    notes.push(say('paper.tenon', { width: tenon.settings.width ?? '', stop: shoulder.settings.stop ?? '' }));
  if (haunch !== undefined) notes.push(say('paper.haunch', haunch.settings));
  if (mitre !== undefined) notes.push(say('paper.mitre', mitre.settings));
  if (arch !== undefined) notes.push(say('paper.arch', arch.settings));
  return notes;
}

function panelNotes(part: PlanPart): string[] {
  const cutout = stageOf(part, 'cutout');
  const raise = stageOf(part, 'raise');
  return [
    ...(cutout === undefined ? [] : [say('paper.panel-arch', cutout.settings)]),
    raise === undefined ? say('paper.flat-panel') : say('paper.raise', raise.settings),
  ];
}
