// @vitest-environment node

import { expect, test } from 'vitest';
import { MEASURES, surveyedDoor, surveyIn, withSurvey } from '#ui/fitting/survey-plan.ts';

const file = {
  format: 1,
  job: 'Rope walk',
  units: 'in',
  defaults: { reveal: '1/16' },
  doors: [
    { mark: 'A', quantity: 3, opening: { width: '30', height: '40' } },
    {
      mark: 'B',
      opening: { width: '30', height: '40' },
      survey: {
        widthBottom: '30',
        widthTop: '30',
        heightLeft: '40',
        heightRight: '40',
        diagonalUp: '50',
        diagonalDown: 50,
      },
    },
  ],
};

const A2 = { door: 'A-2', mark: 'A', measured: {} };
const B1 = { door: 'B-1', mark: 'B', measured: {} };

test('an opening as ordered takes the reveal off each edge at both its ends: a 3-4-5 opening of 30 by 40', () => {
  const result = surveyedDoor(file, A2, surveyIn(file, B1));
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  const { takeOff, closure } = result.value.values.survey ?? { takeOff: null, closure: '' };
  expect(closure).toBe('0.000000');
  expect(takeOff).toEqual({
    left: { bottom: '0.062500', top: '0.062500' },
    right: { bottom: '0.062500', top: '0.062500' },
    bottom: { left: '0.062500', right: '0.062500' },
    top: { left: '0.062500', right: '0.062500' },
  });
});

test('the job’s own survey is taken as written, and a door without one starts empty', () => {
  expect(surveyIn(file, B1).diagonalDown).toBe('50');
  expect(MEASURES.map((name) => surveyIn(file, A2)[name])).toEqual(['', '', '', '', '', '']);
});

test('measures that make no opening, and texts that are no lengths, are refused with their place', () => {
  const impossible = surveyedDoor(file, A2, { ...surveyIn(file, B1), diagonalUp: '90' });
  expect(impossible.ok ? [] : impossible.faults.map(({ path }) => path).join(' ')).toMatch(/survey/);
  const text = surveyedDoor(file, A2, { ...surveyIn(file, B1), widthTop: 'wide' });
  expect(text.ok ? [] : text.faults.map(({ path, code }) => `${path} ${code}`)).toEqual([
    'doors[0].survey.widthTop length-form',
  ]);
});

test('one door of several alike keeps its survey for itself, beside the file; a mark of one door has it in the file', () => {
  const survey = surveyIn(file, B1);
  const saved = withSurvey(file, { ...A2, measured: { thickness: '7/8' } }, survey);
  const measured = saved !== null && 'measured' in saved ? saved.measured : {};
  expect(measured).toEqual({ thickness: '7/8', doors: { 'A-2': { survey } } });
  expect(surveyIn(file, { ...A2, measured })).toEqual(survey);
  expect(surveyIn(file, { ...A2, door: 'A-1', measured }).widthTop).toBe('');
  const moved = { ...survey, widthTop: '30 1/8' };
  expect(withSurvey(file, B1, moved)).toMatchObject({
    file: { doors: [{}, { survey: { widthTop: '30 1/8' } }] },
  });
  expect(withSurvey(file, { door: 'Z-1', mark: 'Z', measured: {} }, survey)).toBeNull();
});

test('a door with an opening of its own is trimmed to that one', () => {
  const measured = { doors: { 'A-2': { opening: { width: '31' } } } };
  const result = surveyedDoor(file, { ...A2, measured }, surveyIn(file, B1));
  expect(result.ok && result.value.values.finishedWidth).toBe('30 7/8');
});
