import { expect, test } from 'vitest';
import { LANGUAGES } from '#core/words/languages.ts';
import { say } from '#core/words/say.ts';
import { drawingWords } from '#core/words/drawing.ts';
import { stageWords } from '#core/words/stages.ts';
import { newDocument } from '#labels/pdf/typeface.ts';
import { layOut } from '#core/drawing/layout.ts';
import type { Drawing } from '#core/drawing/model.ts';
import { svgOf } from '#core/drawing/svg.ts';
import { wordsWidth } from '#core/drawing/type-width.ts';
import type { Reading } from '#core/drawing/value-text.ts';

const drawing: Drawing = {
  title: 'a rail',
  units: 'in',
  shapes: [
    {
      kind: 'dimension',
      from: { x: 0, y: 0 },
      to: { x: 14, y: 0 },
      side: 'below',
      row: 1,
      name: 'length',
      value: '14 3/64',
    },
  ],
};
/** The runs of text in a drawing of one dimension, its name left out, and the exact value that it carries. */
function drawn(reading?: Reading): { readonly text: string; readonly value: string | undefined } {
  const figure = layOut(drawing, { width: 600, height: 200, text: 18, ...(reading && { reading }) });
  const svg = svgOf(figure);
  return {
    text: [...svg.matchAll(/data-role="(?:dimension-value|numerator|denominator)"[^>]*>([^<]*)</g)]
      .map(([, run]) => run)
      .join(' '),
    value: /data-drawn-value="([^"]*)"/.exec(svg)?.[1],
  };
}

test('a drawing without a reading shows sixty-fourths, as paper does', () => {
  expect(drawn()).toEqual({ text: '14 3 64', value: '14 3/64' });
});

test('a drawing follows the measure and the shop’s rounding, and carries the exact value all the same', () => {
  const read = (measure: Reading['measure'], denominator: 16 | 64 = 64) =>
    drawn({ measure, rounding: { denominator, places: 2 } });
  expect(read('fractions', 16)).toEqual({ text: '≈\u00a014 1 16', value: '14 3/64' });
  expect(read('mm')).toEqual({ text: '≈\u00a0356.79', value: '14 3/64' });
  expect(read('decimals')).toEqual({ text: '≈\u00a014.047', value: '14 3/64' });
});

test.each(LANGUAGES)(
  'in %s the room reckoned for words is what the face takes, or a little more',
  async (language) => {
    const { faces } = await newDocument('widths');
    const keys = Object.keys({ ...drawingWords, ...stageWords }) as (keyof typeof drawingWords)[];
    const wrong = keys
      .map((key) => say(key, {}, language))
      .flatMap((text) =>
        ([false, true] as const).flatMap((bold) => {
          const share = wordsWidth(text, 1, bold) / faces[bold ? 'bold' : 'regular'].width(text, 1);
          return share < 0.99 || share > 1.35 ? [`${text} ${bold ? 'bold' : ''} ${share}`] : [];
        }),
      );
    expect(wrong).toEqual([]);
  },
);
