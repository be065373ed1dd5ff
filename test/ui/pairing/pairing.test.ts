import { render, waitFor } from '@testing-library/svelte';
import { afterEach, expect, onTestFinished, test, vi } from 'vitest';
import { say, speak } from '#core/words/say.ts';
import { chosenLanguage } from '#ui/language.ts';
import Pairing from '#ui/pairing/Pairing.svelte';
import Untrusted from '#ui/pairing/Untrusted.svelte';
import { englishShown } from '../english-shown.ts';

// jsdom lays nothing out.
Element.prototype.scrollIntoView = () => undefined;
afterEach(() => {
  speak('en');
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

test('the page of pairing is wholly in the shop’s language, its title too, whatever the browser speaks', async () => {
  const answer = { paired: { name: 'T1', station: 'bench' }, needed: true, ask: 'x', language: 'de' };
  vi.stubGlobal('fetch', () => Promise.resolve(Response.json(answer)));
  render(Pairing);
  await waitFor(() => expect(document.body.textContent).toContain('schon gekoppelt: T1'));
  expect(englishShown()).toEqual([]);
  expect(document.documentElement.lang).toBe('de-DE');
});

test('a device that asks for another language than the shop’s is paired in it, and its screens speak it', async () => {
  history.replaceState(null, '', '/pairing?language=en#token');
  onTestFinished(() => localStorage.clear());
  const answer = { paired: { name: 'T1', station: 'bench' }, needed: true, ask: 'x', language: 'de' };
  vi.stubGlobal('fetch', () => Promise.resolve(Response.json(answer)));
  render(Pairing);
  await waitFor(() =>
    expect(document.body.textContent).toContain(say('pairing.already', { name: 'T1' }, 'en')),
  );
  expect(document.documentElement.lang).toBe('en-US');
  expect(location.href).toMatch(/\/pairing$/);
  expect(chosenLanguage('', localStorage, () => 'de')()).toBe('en');
});

test('where the hub does not answer, the page of pairing is in the browser’s language; that of a lost trust is too', async () => {
  vi.spyOn(navigator, 'languages', 'get').mockReturnValue(['fr', 'de-AT', 'en']);
  vi.stubGlobal('fetch', () => Promise.reject(new TypeError('away')));
  render(Pairing);
  await waitFor(() => expect(document.body.textContent).toContain('antwortet nicht'));
  render(Untrusted);
  expect(englishShown()).toEqual([]);
});
