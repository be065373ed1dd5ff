import { afterEach, expect, test } from 'vitest';
import { say, speak, speakAs } from '#core/words/say.ts';
import { chosenLanguage } from '#ui/language.ts';

afterEach(() => {
  localStorage.clear();
  speak('en');
});

const chosen = (search: string, ofShop?: 'en' | 'pseudo') =>
  chosenLanguage(search, localStorage, () => ofShop)();

test('the language that the address names is remembered, until another is named', () => {
  expect(chosen('?language=pseudo')).toBe('pseudo');
  expect(chosen('')).toBe('pseudo');
  expect(chosen('?language=en')).toBe('en');
  expect(chosen('')).toBe('en');
});

test('a name that is no language changes nothing', () => {
  chosen('?language=pseudo');
  expect(chosen('?language=nobodys')).toBe('pseudo');
});

test('without one of its own a screen follows the shop, at once when the shop chooses another', () => {
  const shop: { language?: 'pseudo' } = {};
  speakAs(chosenLanguage('', localStorage, () => shop.language));
  const plain = say('ui.scan');
  shop.language = 'pseudo';
  expect(say('ui.scan')).not.toBe(plain);
  expect(chosen('?language=en', 'pseudo')).toBe('en');
  expect(chosen('', 'pseudo')).toBe('en');
  expect(chosen('?language=', 'pseudo')).toBe('pseudo');
  expect(chosen('', 'pseudo')).toBe('pseudo');
});
