import { expect, test } from 'vitest';
import { refused } from '#main/printing/printer.ts';
import { reasonInWords, tellRefusal } from '#main/printing/tell-refusal.ts';

test('a printer’s reasons are told by what they mean, several of them once each', () => {
  expect(reasonInWords('media-empty-error', 'en')).toBe('it is out of paper or stickers');
  expect(reasonInWords('cover-open-warning,media-jam,media-jam-error', 'en')).toBe(
    'its cover is open, something is jammed in it',
  );
  expect(reasonInWords('printer-stopped media-needed', 'en')).toBe('it waits for paper or stickers');
});

test('a reason that says nothing is told as none', () => {
  for (const reason of ['–', '', 'none', 'Paused', 'printer-stopped', 'reason unknown', 'Rejecting Jobs'])
    expect(reasonInWords(reason, 'en')).toBe('it does not say why');
});

test('whatever else a printer says is told as its own words', () => {
  expect(reasonInWords('The printer is not responding.', 'en')).toBe(
    'it says “The printer is not responding.”',
  );
  expect(reasonInWords('com.maker-odd-error', 'en')).toBe('it says “com.maker-odd-error”');
  expect(tellRefusal(refused('printer-stopped', { printer: 'Labels', reason: 'out of labels' }), 'en')).toBe(
    'Labels is stopped: it says “out of labels”. Nothing counts as printed; start the printer and print again.',
  );
});

test('only what printers say is put so: a paper that could not be made keeps its reason', () => {
  expect(tellRefusal(refused('not-made', { reason: 'no room' }), 'en')).toBe(
    'The paper could not be made: no room',
  );
});
