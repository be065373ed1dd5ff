import { cleanup, render, screen } from '@testing-library/svelte';
import { afterEach, expect, test } from 'vitest';
import TrimAmounts from '#ui/fitting/TrimAmounts.svelte';

afterEach(cleanup);

const takeOff = {
  left: { bottom: '0.062500', top: '0.062500' },
  right: { bottom: '0.187500', top: '0.062500' },
  bottom: { left: '0.125000', right: '0.125000' },
  top: { left: '0.125000', right: '0.125000' },
};
const shown = (place: string) => document.querySelector(`[data-setting="takeOff"][data-place="${place}"]`);

test('the eight amounts stand by their edge and end, each with the question why', () => {
  render(TrimAmounts, { takeOff, units: 'in' });
  expect(document.querySelectorAll('[data-setting="takeOff"]')).toHaveLength(8);
  expect(shown('right-bottom')?.getAttribute('data-value')).toBe('0.187500');
  expect(shown('right-bottom')?.textContent).toContain('3/16');
  expect(shown('right-top')?.textContent).toContain('1/16');
  expect(shown('top-left')?.textContent).toContain('1/8');
  expect(screen.getByRole('button', { name: 'Right edge, at its bottom: Why this?' })).toBeInstanceOf(
    HTMLButtonElement,
  );
  expect(screen.queryByRole('alert')).toBeNull();
});

test('where the door does not cover the opening it says not to trim, and where', () => {
  render(TrimAmounts, {
    takeOff: { ...takeOff, right: { bottom: '0.062500', top: '-0.062500' } },
    units: 'in',
  });
  const told = screen.getByRole('alert').textContent;
  expect(told).toMatch(/Do not trim: the door does not cover the opening at Right edge, at its top\./);
  expect(shown('right-top')?.textContent).toContain('-\u00a01/16');
  expect(shown('right-top')?.classList.contains('below')).toBe(true);
});
