import { stationName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import type { CardStation } from './card-stations.ts';
import { GAP } from './column-flow.ts';
import type { PaperPage } from './paper-page.ts';
import { bodyOf } from './paper-size.ts';
import { wrapLines } from './text-lines.ts';

/** Height of the cautions' type. */
const CAUTION = 6.5;
const COLUMNS = 3;

/** What can hurt, station by station, in columns at the foot of the first page; gives the height that they end at. */
export function cautions(page: PaperPage, stations: readonly CardStation[]): number {
  const { stream, size } = page;
  const body = bodyOf(size);
  const width = (body.width - 2 * GAP) / COLUMNS;
  const lines = cautionLines(page, stations, width);
  const pitch = CAUTION * 1.22;
  const rows = Math.ceil(lines.length / COLUMNS);
  const top = body.y + rows * pitch;
  stream.line(body.x, top + 9, body.x + body.width, top + 9, 0.5);
  for (const [k, { text, bold }] of lines.entries()) {
    const [x, y] = [body.x + Math.floor(k / rows) * (width + GAP), top - (k % rows) * pitch];
    stream.text(text, x, y, CAUTION, bold ? 'bold' : 'regular');
  }
  return top + 14;
}

function cautionLines({ faces }: PaperPage, stations: readonly CardStation[], width: number) {
  const wrapped = (text: string, bold: boolean) =>
    wrapLines(text, faces[bold ? 'bold' : 'regular'], CAUTION, width).map((line) => ({ text: line, bold }));
  return [
    ...wrapped(say('caution.first'), true),
    ...stations.flatMap(({ station, cautions: own }) => [
      { text: stationName(station), bold: true },
      ...own.flatMap((text) => wrapped(text, false)),
    ]),
  ];
}
