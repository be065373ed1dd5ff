// @vitest-environment node

import { expect, test } from 'vitest';
import {
  jobSizeTexts,
  measuredText,
  openingText,
  withJobSizes,
  withMeasured,
  withOpening,
} from '#ui/office/measured-draft.ts';

const nothing = { thickness: '', grooveWidth: '', length: '', width: '' };

test('sizes are put at the job, a door or a part, and read back from there', () => {
  const job = withMeasured({}, '', '', { ...nothing, thickness: ' 23/32 ' });
  const both = withMeasured(job, 'A-1', 'rail-top', { ...nothing, width: '2 3/16' });
  expect(both).toEqual({
    thickness: '23/32',
    doors: { 'A-1': { parts: { 'rail-top': { width: '2 3/16' } } } },
  });
  expect(measuredText(both, '', '', 'thickness')).toBe('23/32');
  expect(measuredText(both, 'A-1', 'rail-top', 'width')).toBe('2 3/16');
  expect(measuredText(both, 'A-2', 'rail-top', 'width')).toBe('');
});

test('a size taken away leaves no empty places behind, and a whole frame has no width', () => {
  const one = withMeasured({}, 'A-1', 'rail-top', { ...nothing, width: '2 3/16' });
  expect(withMeasured(one, 'A-1', 'rail-top', nothing)).toEqual({});
  expect(withMeasured({}, 'A-1', '', { ...nothing, width: '2' })).toEqual({});
});

test('an opening is one door’s own; emptied, it is that of its mark again', () => {
  const own = withOpening({ thickness: '7/8' }, 'A-2', { width: ' 15 1/4 ', height: '' });
  expect(own).toEqual({ thickness: '7/8', doors: { 'A-2': { opening: { width: '15 1/4' } } } });
  expect(openingText(own, 'A-2')).toEqual({ width: '15 1/4', height: '' });
  expect(openingText(own, 'A-1')).toEqual({ width: '', height: '' });
  expect(withOpening(own, 'A-2', { width: '', height: ' ' })).toEqual({ thickness: '7/8' });
});

test('a job of several sizes has a text for each, found however its size is typed; one of one size has one', () => {
  const sizes = ['3/4', '13/16'];
  const measured = { thickness: [{ of: '0.8125', is: '25/32' }], doors: {} };
  expect(jobSizeTexts(measured, 'thickness', sizes, 'in')).toEqual(['', '25/32']);
  expect(jobSizeTexts({ thickness: '25/32' }, 'thickness', ['3/4'], 'in')).toEqual(['25/32']);
  expect(jobSizeTexts({}, 'grooveWidth', [], 'in')).toEqual(['']);
  expect(withJobSizes(measured, 'thickness', sizes, [' 23/32 ', '25/32'])).toEqual({
    doors: {},
    thickness: [
      { of: '3/4', is: '23/32' },
      { of: '13/16', is: '25/32' },
    ],
  });
  expect(withJobSizes(measured, 'thickness', sizes, ['', ' '])).toEqual({ doors: {} });
  expect(withJobSizes(measured, 'thickness', ['13/16'], ['25/32'])).toEqual({
    doors: {},
    thickness: '25/32',
  });
});
