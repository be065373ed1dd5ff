import { afterEach, expect, test, vi } from 'vitest';
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
  const end = listenForScans(window, { heard: (text) => heard.push(text) });
  for (const [k, key] of [...'803AX3UERH'].entries()) press(field, key, k * 8);
  const enter = press(field, 'Enter', 80);
  expect(heard).toEqual(['803AX3UERH']);
  expect(field.value).toBe('Quay');
  expect(enter.defaultPrevented).toBe(true);
  end();
  for (const [k, key] of [...'803AX3UERH', 'Enter'].entries()) press(field, key, 1000 + k * 8);
  expect(heard).toHaveLength(1);
});

afterEach(() => {
  vi.useRealTimers();
  document.body.replaceChildren();
});

/** Listens on an idle screen, where a button has the focus. */
function idle(): { readonly button: HTMLElement; readonly said: string[]; readonly end: () => void } {
  const button = document.createElement('button');
  document.body.append(button);
  const said: string[] = [];
  const end = listenForScans(window, {
    heard: (text) => said.push(`scan ${text}`),
    typed: (text) => said.push(`typed ${text}`),
  });
  return { button, said, end };
}

test('a person who types slowly where no field is gets a pad with what was typed', () => {
  vi.useFakeTimers();
  const { button, said, end } = idle();
  press(button, '8', 0);
  press(button, '0', 180);
  expect(said).toEqual([]);
  vi.advanceTimersByTime(401);
  expect(said).toEqual(['typed 80']);
  end();
});

test('a third slow key opens it without waiting, and is not typed a second time into the pad', () => {
  const { button, said, end } = idle();
  press(button, '8', 0);
  press(button, '0', 180);
  const third = press(button, '3', 360);
  expect(said).toEqual(['typed 803']);
  expect(third.defaultPrevented).toBe(true);
  end();
});

test('the Enter after a cut-short scan never presses the focused button, and what came is told', () => {
  const { button, said, end } = idle();
  for (const [k, key] of [...'RH'].entries()) press(button, key, k * 8);
  expect(press(button, 'Enter', 16).defaultPrevented).toBe(true);
  expect(said).toEqual(['scan RH']);
  end();
});

test('a scanner that ends with CR and LF presses nothing with the second of them', () => {
  const { button, said, end } = idle();
  for (const [k, key] of [...'803AX3UERH', 'Enter'].entries()) press(button, key, k * 8);
  expect(press(button, 'Enter', 90).defaultPrevented).toBe(true);
  expect(press(button, 'Enter', 900).defaultPrevented).toBe(false);
  expect(said).toEqual(['scan 803AX3UERH']);
  end();
});

test('in a sheet digits and an Enter are the sheet’s, but a whole code is a scan', () => {
  const { button, said, end } = idle();
  const sheet = document.createElement('div');
  sheet.setAttribute('role', 'dialog');
  document.body.append(sheet);
  for (const [k, key] of [...'4711'].entries()) press(button, key, k * 8);
  expect(press(button, 'Enter', 40).defaultPrevented).toBe(false);
  for (const [k, key] of [...'803AX3UERH', 'Enter'].entries()) press(button, key, 5000 + k * 8);
  expect(said).toEqual(['scan 803AX3UERH']);
  end();
});
