import { expect, test } from 'vitest';
import { listenForScans } from '#ui/scan/listen.ts';

function press(target: Element, key: string, at: number): KeyboardEvent {
  const event = new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true });
  Object.defineProperty(event, 'timeStamp', { value: at });
  target.dispatchEvent(event);
  if (target instanceof HTMLInputElement && key.length === 1 && !event.defaultPrevented) target.value += key;
  return event;
}

test('a scan into a focused field leaves the field as it was, and its Enter presses nothing', () => {
  const field = document.createElement('input');
  document.body.append(field);
  field.value = 'Quay';
  const heard: string[] = [];
  const end = listenForScans(window, (text) => heard.push(text));
  for (const [k, key] of [...'803AX3UERH'].entries()) press(field, key, k * 8);
  const enter = press(field, 'Enter', 80);
  expect(heard).toEqual(['803AX3UERH']);
  expect(field.value).toBe('Quay');
  expect(enter.defaultPrevented).toBe(true);
  end();
  for (const [k, key] of [...'803AX3UERH', 'Enter'].entries()) press(field, key, 1000 + k * 8);
  expect(heard).toHaveLength(1);
});
