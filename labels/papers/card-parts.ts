import type { PlanDoor, PlanPart } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';
import { partName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import { asText } from '../pdf/value-on-paper.ts';
import type { PaperPage } from './paper-page.ts';
import { bodyOf } from './paper-size.ts';
import { sizeThatFits } from './text-lines.ts';

/** From one base line to the next, in points. */
export const PART_PITCH = 12.5;

/** How many lines the parts take: more than nine stand in two columns. */
export function partRows({ parts }: PlanDoor): number {
  return parts.length > 9 ? Math.ceil(parts.length / 2) : parts.length;
}

/** Where code and size stand behind a part's name, and the type of both, in one column or in two. */
const ONE_COLUMN = { code: 100, size: 190, type: 9 };
const TWO_COLUMNS = { code: 60, size: 130, type: 8 };

/** The parts with their codes and sizes, from a height down; gives the height of the last line. */
export function writeParts(page: PaperPage, door: PlanDoor, units: Units, from: number): number {
  const { stream, size, faces } = page;
  const body = bodyOf(size);
  stream.text(say('paper.parts'), body.x, from, 10, 'bold');
  const rows = partRows(door);
  const narrow = rows < door.parts.length;
  const at = narrow ? TWO_COLUMNS : ONE_COLUMN;
  const room = narrow ? body.width / 2 - 140 : body.width - 190;
  for (const [k, part] of door.parts.entries()) {
    const x = body.x + Math.floor(k / rows) * (body.width / 2);
    const y = from - PART_PITCH * ((k % rows) + 1);
    const sizes = sizesOf(part, units);
    stream.text(partName(part.part), x, y, at.type);
    stream.text(`${part.code.slice(0, 5)} ${part.code.slice(5)}`, x + at.code, y, at.type, 'bold');
    stream.text(sizes, x + at.size, y, sizeThatFits(sizes, faces.regular, 9, 6, room));
  }
  return from - PART_PITCH * rows;
}

function sizesOf(part: PlanPart, units: Units): string {
  const [length = '', width = '', thickness = ''] = [part.length, part.width, part.thickness].map((each) =>
    asText(each, units),
  );
  return `${say('paper.size', { length, width, thickness })} ${units}`;
}
