import { drawn } from '#core/views/drawn.ts';
import { profileOf } from '#core/views/profile.ts';
import { printLength } from '#core/length/print-length.ts';
import { hornsOf } from '#core/plan/as-built.ts';
import { readPart } from '#core/plan/part-name.ts';
import { placeEnd } from '#core/plan/place-name.ts';
import { stageOf, stagesOf } from '#core/plan/stage-of.ts';
import { area, at, polygon, rectangle, stroke } from '#core/drawing/shapes.ts';
import type { Area } from '#core/drawing/model.ts';
import type { Plan, PlanPart } from '#core/plan/plan.ts';
import { partName, placeName, stageName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import { type Alike, alike, cutKey } from './alike.ts';
import type { FullSize, FullSizeDraft } from './full-size.ts';
import { type RodLine, rodSheets } from './rod.ts';
import { withUnit } from '../pdf/value-on-paper.ts';

/** A full-size rod of every different stile: ends, horns, mortises, mitres and shoulder lines. */
export function stileRods(plan: Plan): FullSizeDraft[] {
  return alike(plan, (part) =>
    readPart(part).kind === 'stile' ? cutKey(part, ['mortise', 'mitre-end', 'notch']) : null,
  ).map((group) => () => stileRod(group, plan));
}

function stileRod({ part, door, doors, parts }: Alike, { units }: Plan): FullSize {
  const { length, width } = profileOf(part);
  const horns = hornsOf(door, part, units);
  const value = (text: string) => withUnit(text, units);
  const across: RodLine[] = [
    { at: 0, text: say('paper.rod-bottom-end') },
    { at: length, text: say('paper.rod-top-end', { length: value(part.length) }) },
  ];
  for (const end of ['bottom', 'top'] as const) {
    const horn = printLength(horns[end]);
    if (drawn(horn) > 0)
      across.push({
        at: fromBottom(drawn(horn), end, length),
        text: say('paper.rod-horn', { value: value(horn) }),
      });
  }
  across.push(...mortiseLines(part, value), ...mitreLines(part, value));
  return rodSheets({
    title: say('paper.rod-of', { part: parts.map((each) => partName(each)).join(' + ') }),
    lines: [say('paper.rod-stile-size', { length: value(part.length), width: value(part.width), units })],
    use: [say('paper.rod-stile-use')],
    doors,
    units,
    length,
    width,
    outline: rectangle(0, 0, width, length),
    shapes: [...mortiseShapes(part), ...mitreShapes(part)],
    across,
    words: 290,
  });
}

/** Height from the bottom end of a value that is measured from one end or the other. */
function fromBottom(value: number, from: 'top' | 'bottom', length: number): number {
  return from === 'top' ? length - value : value;
}

type Say = (value: string) => string;

function mortiseLines(part: PlanPart, value: Say): RodLine[] {
  const length = drawn(part.length);
  return (stageOf(part, 'mortise')?.places ?? []).flatMap(({ at: place, settings }) => {
    const from = placeEnd(place);
    return (['start', 'stop'] as const).map((which) => ({
      at: fromBottom(drawn(settings[which]), from, length),
      text: say(`paper.rod-mortise-${which}-${from}`, {
        place: placeName(place),
        value: value(settings[which]),
      }),
    }));
  });
}

function mitreLines(part: PlanPart, value: Say): RodLine[] {
  const length = drawn(part.length);
  return stagesOf(part, 'mitre-end').flatMap(({ stage, settings }) => {
    const from = settings.fromEnd;
    return (['sightEdge', 'shoulderLine'] as const).map((which) => ({
      at: fromBottom(drawn(settings[which]), from, length),
      text: say(`paper.rod-${which}-${from}`, { what: stageName(stage), value: value(settings[which]) }),
    }));
  });
}

function mortiseShapes(part: PlanPart): Area[] {
  const { length, width } = profileOf(part);
  const mortise = stageOf(part, 'mortise');
  if (mortise === undefined) return [];
  const depth = drawn(mortise.settings.depthFromEdge);
  return mortise.places.map(({ at: place, settings }) => {
    const from = placeEnd(place);
    const ends = [drawn(settings.start), drawn(settings.stop)].map((each) => fromBottom(each, from, length));
    return area(
      rectangle(width - depth, Math.min(...ends), width, Math.max(...ends)),
      'mortise',
      'none',
      'hidden',
      place,
    );
  });
}

/** The mitre's slope from the sight edge in to the shoulder line, and the shoulder line of the bead taken away. */
function mitreShapes(part: PlanPart): Area[] {
  const { length, width } = profileOf(part);
  return stagesOf(part, 'mitre-end').flatMap(({ settings }) => {
    const from = settings.fromEnd;
    const edge = fromBottom(drawn(settings.sightEdge), from, length);
    const line = fromBottom(drawn(settings.shoulderLine), from, length);
    const inward = width - drawn(settings.height);
    return [
      area(polygon([at(width, edge), at(inward, line), at(width, line)]), 'mitre', 'none', 'edge'),
      area(stroke(at(inward, line), at(width, line)), 'shoulder', 'none', 'fine'),
    ];
  });
}
