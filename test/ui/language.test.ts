import { afterEach, expect, test } from 'vitest';
import { say, speak } from '#core/words/say.ts';
import { chooseLanguage } from '#ui/language.ts';

afterEach(() => {
  localStorage.clear();
  speak('en');
});

test('the language that the address names is spoken and remembered, until another is named', () => {
  const plain = say('ui.scan');
  expect(chooseLanguage('?language=pseudo', localStorage)).toBe('pseudo');
  expect(say('ui.scan')).not.toBe(plain);
  expect(chooseLanguage('', localStorage)).toBe('pseudo');
  expect(chooseLanguage('?language=en', localStorage)).toBe('en');
  expect(say('ui.scan')).toBe(plain);
  expect(chooseLanguage('', localStorage)).toBe('en');
});

test('a name that is no language changes nothing', () => {
  chooseLanguage('?language=pseudo', localStorage);
  expect(chooseLanguage('?language=nobodys', localStorage)).toBe('pseudo');
  localStorage.clear();
  expect(chooseLanguage('?language=', localStorage)).toBe('en');
});
