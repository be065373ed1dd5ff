import { fireEvent, render, screen } from '@testing-library/svelte';
import { tick } from 'svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import DueField from '#ui/office/DueField.svelte';

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date'] });
  vi.setSystemTime(new Date(2026, 10, 29, 12));
});
afterEach(() => vi.useRealTimers());

function shown(due = '', told = '') {
  const props = $state({ due, told });
  render(DueField, { props });
  return props;
}
const field = () => screen.getByRole<HTMLInputElement>('combobox', { name: 'Due' });
const day = (name: string) => screen.getByRole('button', { name });
const focused = () => document.activeElement?.getAttribute('aria-label');
async function press(key: string): Promise<void> {
  await fireEvent.keyDown(document.activeElement ?? document.body, { key });
  await tick();
}

test('a tap on the field opens a calendar at today, and a tap on a day takes it, said with its weekday', async () => {
  const props = shown();
  await fireEvent.click(field());
  expect(screen.getByRole('dialog', { name: 'Due' }).isConnected).toBe(true);
  expect(day('Sunday, November 29, 2026').getAttribute('aria-current')).toBe('date');
  await fireEvent.click(day('Next month'));
  await fireEvent.click(day('Friday, December 18, 2026'), { detail: 0 });
  expect(props.due).toBe('2026-12-18');
  expect(screen.queryByRole('dialog')).toBeNull();
  await fireEvent.blur(field());
  expect(field().value).toBe('Fri, Dec 18, 2026');
});

test('from the keyboard: the arrow opens it, arrows and pages move the day, Escape goes back to the field', async () => {
  const props = shown('2026-12-31');
  field().focus();
  await press('ArrowDown');
  expect(focused()).toBe('Thursday, December 31, 2026');
  expect(document.activeElement?.getAttribute('aria-pressed')).toBe('true');
  await press('ArrowRight');
  expect(focused()).toBe('Friday, January 1, 2027');
  await press('ArrowDown');
  await press('PageDown');
  await press('Home');
  expect(focused()).toBe('Sunday, February 7, 2027');
  await press('Escape');
  expect(screen.queryByRole('dialog')).toBeNull();
  expect(document.activeElement).toBe(field());
  expect(props.due).toBe('2026-12-31');
});

test('a date is typed in either way; what is none stays as it was typed, to be told', async () => {
  const props = shown();
  field().focus();
  for (const typed of ['2027-05-03', '5/3/2027']) {
    await fireEvent.input(field(), { target: { value: typed } });
    expect(props.due).toBe('2027-05-03');
    expect(field().value).toBe(typed);
  }
  await fireEvent.input(field(), { target: { value: '31/31/2027' } });
  expect(props.due).toBe('31/31/2027');
});

test('who comes into the field has all its figures chosen, so that typing replaces them', async () => {
  shown('2026-12-18');
  field().focus();
  await tick();
  expect(field().value).toBe('12/18/2026');
  expect([field().selectionStart, field().selectionEnd]).toEqual([0, 10]);
});

test('no date is one tap in the calendar; a tap elsewhere puts the calendar away', async () => {
  const props = shown('2026-12-18');
  await fireEvent.click(field());
  await fireEvent.click(day('No date'));
  expect(props.due).toBe('');
  await fireEvent.click(field());
  expect(screen.queryByRole('dialog')).not.toBeNull();
  await fireEvent.click(document.body);
  expect(screen.queryByRole('dialog')).toBeNull();
});

test('what is wrong with the date is told below it', () => {
  shown('2027-02-30', 'That date does not exist.');
  expect(field().getAttribute('aria-invalid')).toBe('true');
  expect(document.querySelector('[data-told="due"]')?.textContent).toBe('That date does not exist.');
});
