import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { screenMemory } from '#ui/screen-memory.ts';

beforeEach(() => localStorage.clear());
afterEach(() => vi.restoreAllMocks());

test('a screen remembers in the browser’s own storage', () => {
  screenMemory.setItem('a', '1');
  expect(localStorage.getItem('a')).toBe('1');
  expect(screenMemory.getItem('a')).toBe('1');
  expect(screenMemory.getItem('b')).toBeNull();
});

test('where the storage is denied or full the screen works on and remembers for itself', () => {
  const denied = () => {
    throw new DOMException('denied', 'SecurityError');
  };
  vi.spyOn(Storage.prototype, 'getItem').mockImplementation(denied);
  vi.spyOn(Storage.prototype, 'setItem').mockImplementation(denied);
  expect(screenMemory.getItem('c')).toBeNull();
  screenMemory.setItem('c', '2');
  expect(screenMemory.getItem('c')).toBe('2');
  vi.restoreAllMocks();
  screenMemory.setItem('c', '3');
  expect(screenMemory.getItem('c')).toBe('3');
  expect(localStorage.getItem('c')).toBe('3');
});
