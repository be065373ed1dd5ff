import { looseStage } from '../../loose-plan.ts';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';

const file: unknown = JSON.parse(
  readFileSync(new URL('../../fixtures/worked-example.json', import.meta.url), 'utf8'),
);

function stage(partName: string, stageName: string) {
  const planned = planFile(file);
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  const part = planned.value.doors[0]?.parts.find(({ part }) => part === partName);
  const found = part === undefined ? undefined : looseStage(part, stageName);
  if (part === undefined || found === undefined) throw new Error(`${partName} has no ${stageName}`);
  return { part, settings: found.settings, places: found.places ?? [] };
}

/** At the mortiser the front runs along the fence at every place, and the place's own end comes to this stop. */
const lies = (endStop: string) => ({ faceToFence: 'front', endStop });

test('the stile of the worked example is mortised, mitred and stripped where it says', () => {
  const mortise = stage('stile-left', 'mortise');
  expect(mortise.part.length).toBe('23 1/2');
  expect(mortise.settings).toEqual({
    depthFromEdge: '1 9/16',
    depthFromGroove: '1 3/16',
    chisel: '1/4',
    fence: '5/16',
  });
  expect(mortise.places).toEqual([
    {
      at: 'bottom',
      settings: { start: '7/8', stop: '2 3/4', length: '1 7/8', plunges: 8, ...lies('left') },
    },
    { at: 'top', settings: { start: '7/8', stop: '3 3/4', length: '2 7/8', plunges: 12, ...lies('right') } },
  ]);
  expect(stage('stile-left', 'mitre-bottom').settings).toEqual({
    fromEnd: 'bottom',
    sightEdge: '3 1/4',
    shoulderLine: '3',
    height: '1/4',
    tilt: 45,
  });
  expect(stage('stile-left', 'mitre-top').settings).toEqual({
    fromEnd: 'top',
    sightEdge: '4 1/4',
    shoulderLine: '4',
    height: '1/4',
    tilt: 45,
  });
  // Sight edge up, front away: the left stile's bottom end and the right one's top come to the left stop.
  const stops = (part: 'stile-left' | 'stile-right') =>
    stage(part, 'mortise').places.map(({ settings }) => [settings.faceToFence, settings.endStop]);
  expect(stops('stile-left')).toEqual([
    ['front', 'left'],
    ['front', 'right'],
  ]);
  expect(stops('stile-right')).toEqual([
    ['front', 'right'],
    ['front', 'left'],
  ]);
  const strip = stage('stile-left', 'strip');
  expect(strip.settings).toMatchObject({ fence: '2', bladeHeight: '1', reach: '3.000000' });
  expect(Number(strip.settings.lag)).toBeCloseTo(1.889, 3);
  expect(strip.places).toEqual([
    { at: 'bottom', settings: { run: '3', faceUp: 'front' } },
    { at: 'top', settings: { run: '4', faceUp: 'back' } },
  ]);
  expect(stage('stile-right', 'strip').places.map(({ settings }) => settings.faceUp)).toEqual([
    'back',
    'front',
  ]);
});

test('the rails of the worked example carry its tenons, haunch and arch', () => {
  expect(stage('rail-bottom', 'tenon').settings).toEqual({
    width: '1 7/8',
    outerHeight: '3/8',
    outerStop: '1 1/8',
    innerHeight: '1/2',
    innerStop: '1 1/4',
  });
  expect(stage('rail-top', 'tenon').settings.width).toBe('2 7/8');
  expect(stage('rail-top', 'haunch').settings).toEqual({ length: '1/8', height: '3/8' });
  const arch = stage('rail-top', 'arch');
  expect(arch.part).toMatchObject({ length: '13 1/4', width: '3 3/4' });
  expect(arch.settings).toMatchObject({
    chord: '8 3/4',
    rise: '1 3/4',
    radius: '6 11/32',
    pivot: '4 19/32',
    springing: '2 1/4',
    centre: '6 5/8',
  });
  expect(Number(arch.settings.arcLength)).toBeCloseTo(9.655, 3);
  expect(stage('rail-bottom', 'mitre').settings).toMatchObject({ sightEdge: '1 1/2', shoulderLine: '1 1/4' });
});

test('the panel of the worked example follows the arch a hold larger', () => {
  const cutout = stage('panel', 'cutout');
  expect(cutout.part).toMatchObject({ length: '18 3/8', width: '10 7/8' });
  expect(cutout.settings).toMatchObject({
    sideHeight: '16 5/8',
    radius: '6 21/32',
    pivot: '4 29/32',
    rise: '1 3/4',
    centre: '5 7/16',
  });
  expect(Number(cutout.settings.chord)).toBeCloseTo(8.997, 3);
  expect(Number(cutout.settings.flat)).toBeCloseTo(0.939, 3);
});
