import { expect, test } from 'vitest';
import { MEASURES, surveyedDoor, surveyIn } from '#ui/fitting/survey-plan.ts';

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

test('an opening as ordered takes the reveal off each edge at both its ends: a 3-4-5 opening of 30 by 40', () => {
  const result = surveyedDoor(file, 'A', surveyIn(file, 'B'));
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
  expect(surveyIn(file, 'B').diagonalDown).toBe('50');
  expect(MEASURES.map((name) => surveyIn(file, 'A')[name])).toEqual(['', '', '', '', '', '']);
});

test('measures that make no opening, and texts that are no lengths, are refused with their place', () => {
  const impossible = surveyedDoor(file, 'A', { ...surveyIn(file, 'B'), diagonalUp: '90' });
  expect(impossible.ok ? [] : impossible.faults.map(({ path }) => path).join(' ')).toMatch(/survey/);
  const text = surveyedDoor(file, 'A', { ...surveyIn(file, 'B'), widthTop: 'wide' });
  expect(text.ok ? [] : text.faults.map(({ path, code }) => `${path} ${code}`)).toEqual([
    'doors[0].survey.widthTop length-form',
  ]);
});
