// @vitest-environment node

import { expect, test } from 'vitest';
import { readProfile } from '#core/shop/read-profile.ts';
import type { ShopDraft } from '#ui/office/shop-draft.ts';
import { speakFaults } from '#core/telling/speak-faults.ts';
import { tellTool } from '#ui/office/tell-tool.ts';

const inches: ShopDraft['tools']['in'] = {
  chisels: '1/4, 5/x, 3/8',
  dadoWidths: '1/4',
  drums: '1',
  'blade.diameter': '10',
  'blade.greatestHeight': '0',
  'blade.ripHeight': '',
  bearingRadius: '1/4',
  slidingFit: '',
  panelBand: '1,5',
  'tolerances.fence': '',
  'tolerances.stop': '',
  'tolerances.height': '',
  'tolerances.milling': '',
};

const tools = { in: inches, mm: { ...inches, chisels: '6, 8,5' } };

test('a tool that is not typed rightly is told by its label, the very size of a list', () => {
  const read = readProfile(
    {
      chisels: ['1/4', '5/x', '3/8'],
      blade: { diameter: '10', greatestHeight: '0' },
      slidingFit: '',
      panelBand: '1,5',
      'tolerances.fence': '',
      'tolerances.stop': '',
      'tolerances.height': '',
      'tolerances.milling': '',
    },
    'in',
  );
  const faults = speakFaults(read.ok ? [] : read.faults).map((fault) => ({
    ...fault,
    path: `profile.${fault.path}`,
  }));
  expect(faults.map((fault) => tellTool(fault, { tools, units: 'in' }))).toEqual(
    expect.arrayContaining([
      { label: 'Hollow chisels, inches', words: 'Not a length: type it as 14\u00a03/4, 14-3/4 or 14.75.' },
      { label: 'Saw blade, greatest height, inches', words: 'It must be more than 0.' },
      { label: 'Sliding fit, inches', words: 'Still empty.' },
      { label: 'Bevel width of a raised panel, inches', words: 'Type a point, not a comma: 1.5.' },
    ]),
  );
});

test('of the tools in the other units the fault is told in those', () => {
  const fault = { path: 'otherProfile.chisels[1]', code: 'length-form', message: '' };
  expect(tellTool(fault, { tools, units: 'in' })).toMatchObject({ label: 'Hollow chisels, millimeters' });
});
