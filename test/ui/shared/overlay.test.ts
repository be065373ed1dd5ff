import { afterEach, expect, test, vi } from 'vitest';
import { overlay } from '#ui/shared/overlay.ts';

afterEach(() => document.body.replaceChildren());

const inert = (element: Element) => element.hasAttribute('inert');

function sheet(level: number): { readonly node: HTMLElement; readonly button: HTMLElement } {
  const node = document.createElement('div');
  node.style.zIndex = String(level);
  node.tabIndex = -1;
  const button = document.createElement('button');
  button.className = 'strong';
  node.append(button);
  document.body.append(node);
  return { node, button };
}
function key(name: string, target: Element = document.body): void {
  target.dispatchEvent(new KeyboardEvent('keydown', { key: name, bubbles: true, cancelable: true }));
}
/** Lays it over the screen; returns what takes it away again. */
function lay(node: HTMLElement, how: Parameters<typeof overlay>[0]): () => void {
  return overlay(how)(node) ?? (() => undefined);
}

test('what is behind a sheet is out of reach, the focus goes into it, and back when it is gone', () => {
  const behind = document.createElement('button');
  document.body.append(behind);
  behind.focus();
  const { node, button } = sheet(10);
  const gone = lay(node, {});
  expect(inert(behind)).toBe(true);
  expect(document.activeElement).toBe(button);
  gone();
  expect(inert(behind)).toBe(false);
  expect(document.activeElement).toBe(behind);
});

test('of two sheets the higher one answers to Escape and holds the focus', () => {
  const low = sheet(10);
  const high = sheet(20);
  const closed = { low: vi.fn(), high: vi.fn() };
  const gone = [lay(low.node, { escape: closed.low }), lay(high.node, { escape: closed.high })];
  expect([inert(low.node), inert(high.node)]).toEqual([true, false]);
  key('Escape');
  expect([closed.low.mock.calls.length, closed.high.mock.calls.length]).toEqual([0, 1]);
  gone[1]?.();
  key('Escape');
  expect([closed.low.mock.calls.length, closed.high.mock.calls.length]).toEqual([1, 1]);
  gone[0]?.();
});

test('Enter closes a message wherever the focus went, but a focused button keeps its own Enter', () => {
  const { node, button } = sheet(10);
  const enter = vi.fn();
  const gone = lay(node, { enter });
  key('Enter', button);
  expect(enter).not.toHaveBeenCalled();
  key('Enter', node);
  expect(enter).toHaveBeenCalledTimes(1);
  gone();
});

test('a sheet of another make that comes up above stays in reach', () => {
  const { node } = sheet(10);
  const gone = lay(node, {});
  const pad = document.createElement('div');
  pad.setAttribute('role', 'dialog');
  document.body.append(pad);
  const behind = document.createElement('main');
  document.body.append(behind);
  return Promise.resolve().then(() => {
    expect([inert(pad), inert(behind)]).toEqual([false, true]);
    gone();
  });
});
