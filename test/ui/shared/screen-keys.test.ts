import { render } from '@testing-library/svelte';
import { tick } from 'svelte';
import { afterEach, expect, test } from 'vitest';
import ScreenKeys from '#ui/shared/ScreenKeys.svelte';

afterEach(() => document.body.replaceChildren());

function field(name: string): HTMLInputElement {
  const input = document.createElement('input');
  input.type = 'text';
  input.name = name;
  input.scrollIntoView = () => undefined;
  document.body.append(input);
  return input;
}
const key = (name: string) => document.querySelector<HTMLElement>(`[data-screen-keys] [data-key="${name}"]`);

test('Enter on the letters goes on to the next field, and after the last one the keys go away', async () => {
  const [job, customer] = [field('job'), field('customer')];
  const left: string[] = [];
  job.addEventListener('change', () => left.push(job.value));
  render(ScreenKeys);
  job.click();
  await tick();
  key('q')?.click();
  key('enter')?.click();
  await tick();
  expect(left).toEqual(['Q']);
  expect(document.activeElement).toBe(customer);
  key('w')?.click();
  expect(customer.value).toBe('W');
  key('enter')?.click();
  await tick();
  expect(key('enter')).toBeNull();
});

test('a field of figures has the key to the next one too, and what stands there is replaced by what is typed', async () => {
  const [width, height] = [field('width'), field('height')];
  width.dataset.keys = 'length';
  height.dataset.keys = 'length';
  height.value = '30';
  render(ScreenKeys);
  width.click();
  await tick();
  key('enter')?.click();
  await tick();
  expect(document.activeElement).toBe(height);
  key('2')?.click();
  key('8')?.click();
  expect(height.value).toBe('28');
});

test('the rows of letters lie as on a keyboard', async () => {
  const name = field('job');
  render(ScreenKeys);
  name.click();
  await tick();
  const keys = [...document.querySelectorAll<HTMLElement>('[data-screen-keys] .keys [data-key]')];
  expect(keys.map(({ dataset }) => dataset.key).join('')).toContain('qwertyuiop');
});
