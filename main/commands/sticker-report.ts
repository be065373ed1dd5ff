import { partName } from '#core/telling/names.ts';
import { counted, say } from '#core/words/say.ts';
import type { Stickers, TooLarge } from '#labels/index.ts';

const MOST_NAMED = 10;

type Made = Extract<Stickers, { ok: true }>;

/** What to say of stickers that were made: how many, which parts need two, and for which parts the stock is too large. */
export function stickerReport(made: Made, stock: string, out: string): string[] {
  const { stickers, parts, pages, doubled, tooLarge } = made;
  const lines = [
    say('paper.made', {
      stickers: counted('paper.count.stickers', stickers),
      parts: counted('office.count.parts', parts),
      pages: counted('paper.count.pages', pages),
      stock,
      out,
    }),
  ];
  if (doubled.length > 0)
    lines.push(counted('paper.made-doubled', doubled.length, { codes: named(doubled) }));
  const groups = new Map<string, TooLarge[]>();
  for (const each of tooLarge) {
    const alike = `${each.state} ${each.fits.join(', ')}`;
    groups.set(alike, [...(groups.get(alike) ?? []), each]);
  }
  for (const group of groups.values()) {
    const [first] = group;
    if (first === undefined) continue;
    const where = named(group.map(({ door, part, code }) => `${door} ${partName(part)} ${code}`));
    const fits = first.fits.length === 0 ? say('paper.none-of-them') : first.fits.join(', ');
    lines.push(counted(`paper.made-${first.state}`, group.length, { where, stock, fits }));
  }
  return lines;
}

function named(all: readonly string[]): string {
  return `${all.slice(0, MOST_NAMED).join(', ')}${all.length > MOST_NAMED ? ' …' : ''}`;
}
