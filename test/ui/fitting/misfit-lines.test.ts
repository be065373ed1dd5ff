import { cleanup, fireEvent, render } from '@testing-library/svelte';
import { afterEach, expect, test, vi } from 'vitest';
import { misfitLines } from '#ui/fitting/misfit-lines.ts';
import MisfitList from '#ui/fitting/MisfitList.svelte';

afterEach(cleanup);

const SQUARE = {
  widthBottom: '30',
  widthTop: '30',
  heightLeft: '40',
  heightRight: '40',
  diagonalUp: '50',
  diagonalDown: '50',
};
const MISTYPED = { ...SQUARE, diagonalDown: '49' };

test('a mistyped diagonal is told among the six with what it would be, the largest mistake first', () => {
  const lines = misfitLines(MISTYPED, 'in');
  expect(lines).toHaveLength(6);
  expect(lines.find(({ measure }) => measure === 'diagonalDown')).toEqual({
    measure: 'diagonalDown',
    wouldBe: '50',
    off: '1',
  });
  // A rectangle's sides are moved the more, the shorter they are beside its diagonals.
  expect(lines[0]?.measure).toMatch(/^width/);
});

test('what is no length yet, or makes no opening whichever were wrong, has no lines', () => {
  expect(misfitLines({ ...SQUARE, widthTop: 'wide' }, 'in')).toEqual([]);
  expect(misfitLines({ ...SQUARE, diagonalDown: '90', diagonalUp: '5' }, 'in')).toEqual([]);
});

test('a line shows what was typed and what it would be, and a tap opens that measure', async () => {
  const again = vi.fn();
  render(MisfitList, { lines: misfitLines(MISTYPED, 'in'), survey: MISTYPED, again });
  const line = document.querySelector('[data-misfit="diagonalDown"]');
  expect(line?.textContent.replaceAll(/\s+/g, ' ')).toContain('49 50');
  expect(line?.textContent).toContain('differs by 1');
  if (line !== null) await fireEvent.click(line);
  expect(again).toHaveBeenCalledExactlyOnceWith('diagonalDown');
});
