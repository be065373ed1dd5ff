import { readPart } from '#core/plan/part-name.ts';
import { parsePlace, placeEnd } from '#core/plan/place-name.ts';
import type { Plan, PlanDoor, PlanPart, Settings } from '#core/plan/plan.ts';
import { stageOf } from '#core/plan/stage-of.ts';
import type { Units } from '#core/length/units.ts';
import type { StickerPlace } from '#core/stickers/sticker-place.ts';
import { placeWords } from '#core/stickers/sticker-place.ts';
import { partName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import { asText } from '../pdf/value-on-paper.ts';

/** What stands on one part's sticker, before it is laid out. All numbers as a tape reads them. */
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
  const { units } = plan;
  return {
    code: part.code,
    job: plan.job,
    mark: door.mark,
    part: partName(part.part),
    size: say('paper.size', {
      length: asText(part.length, units),
      width: asText(part.width, units),
      thickness: asText(part.thickness, units),
    }),
    notes: [...notesOf(part, units), placeWords(part, place, units)],
  };
}

function notesOf(part: PlanPart, units: Units): string[] {
  switch (readPart(part).kind) {
    case 'stile':
      return [...edgeNotes(part, units), ...stileNotes(part, units)];
    case 'rail':
      return [...edgeNotes(part, units), ...railNotes(part, units)];
    case 'panel':
      return panelNotes(part, units);
  }
}

/** A stage's settings as they are read on paper. */
function read(settings: Settings, units: Units): Record<string, string> {
  return Object.fromEntries(Object.entries(settings).map(([name, value]) => [name, asText(value, units)]));
}

function edgeNotes(part: PlanPart, units: Units): string[] {
  const bead = stageOf(part, 'bead');
  const groove = stageOf(part, 'groove') ?? stageOf(part, 'slot');
  return [
    bead === undefined ? say('paper.no-bead') : say('paper.bead', read(bead.settings, units)),
    ...(groove === undefined ? [] : [say('paper.groove', read(groove.settings, units))]),
  ];
}

function stileNotes(part: PlanPart, units: Units): string[] {
  const mortise = stageOf(part, 'mortise');
  if (mortise === undefined) return [];
  const places = mortise.places.map(({ at, settings }) => {
    const place = parsePlace(at);
    if (place?.at === 'mid') return say('paper.mortise-mid', { k: place.k, ...read(settings, units) });
    return say(placeEnd(at) === 'top' ? 'paper.mortise-top' : 'paper.mortise-bottom', read(settings, units));
  });
  return [
    say('paper.mortises', {
      depth: asText(mortise.settings.depthFromEdge, units),
      places: places.join(', '),
    }),
  ];
}

function railNotes(part: PlanPart, units: Units): string[] {
  const notes: string[] = [];
  const tenon = stageOf(part, 'tenon');
  const shoulder = stageOf(part, 'shoulder');
  const haunch = stageOf(part, 'haunch');
  const mitre = stageOf(part, 'mitre');
  const arch = stageOf(part, 'arch');
  if (tenon !== undefined && shoulder !== undefined)
    notes.push(
      say('paper.tenon', {
        width: asText(tenon.settings.width, units),
        stop: asText(shoulder.settings.stop, units),
      }),
    );
  if (haunch !== undefined) notes.push(say('paper.haunch', read(haunch.settings, units)));
  if (mitre !== undefined) notes.push(say('paper.mitre', read(mitre.settings, units)));
  if (arch !== undefined) notes.push(say('paper.arch', read(arch.settings, units)));
  return notes;
}

function panelNotes(part: PlanPart, units: Units): string[] {
  const cutout = stageOf(part, 'cutout');
  const raise = stageOf(part, 'raise');
  return [
    ...(cutout === undefined ? [] : [say('paper.panel-arch', read(cutout.settings, units))]),
    raise === undefined ? say('paper.flat-panel') : say('paper.raise', read(raise.settings, units)),
  ];
}
