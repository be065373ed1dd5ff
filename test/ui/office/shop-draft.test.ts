// @vitest-environment node

import { expect, test } from 'vitest';
import { shopAnswer, shopFile } from '#core/api/shop-api.ts';
import { readProfile, writeProfile } from '#core/shop/read-profile.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import { shopAtFirst } from '#core/shop/shop-start.ts';
import { emptyPerson, shopDraftOf, shopFileOf } from '#ui/office/shop-draft.ts';

const shop = shopAnswer.parse({
  revision: 3,
  ...shopAtFirst(),
  otherProfile: writeProfile(builtInProfile('mm')),
});

test('a shop that is opened and saved without a change is the same', () => {
  const { revision: _revision, otherProfile, ...same } = shop;
  expect(shopFileOf(shopDraftOf(shop), shop)).toEqual({
    ...same,
    otherProfile: {
      ...otherProfile,
      slidingFit: '0.4',
      tolerances: { fence: '0.2', stop: '0.4', height: '0.2', milling: '0.4' },
    },
  });
});

test('a shop that is in English without having said so says so no more than before, another language is saved', () => {
  const draft = shopDraftOf(shop);
  expect(draft.language).toBe('en');
  expect(shopFileOf({ ...draft, language: 'de' }, shop).language).toBe('de');
  expect(shopFileOf(draft, { ...shop, language: 'de' }).language).toBe('en');
});

test('what is typed becomes a shop that the hub takes: a badge gets its P-, a person an id, empty rows fall away', () => {
  const draft = shopDraftOf(shop);
  draft.people = [
    { ...emptyPerson(), name: 'Wren Aldous', badge: 'wren' },
    { ...emptyPerson(), name: 'Wren Aldous', badge: 'P-W2' },
    emptyPerson(),
  ];
  draft.widths.mortiser = '344';
  draft.denominator = '32';
  draft.places = 'half';
  draft.tools.in.chisels = '1/4, 3/8 ,';
  draft.tools.mm.chisels = '6, 9.5';
  const file = shopFile.parse(shopFileOf(draft, shop));
  expect(file.people).toEqual([
    { id: 'wren-aldous', name: 'Wren Aldous', badge: 'P-WREN' },
    { id: 'wren-aldous-2', name: 'Wren Aldous', badge: 'P-W2' },
  ]);
  expect(file.stations).toEqual({ mortiser: { screenWidthMm: 344 } });
  expect(file.rounding).toEqual({ denominator: 32, places: 1, half: true });
  const again = shopDraftOf({ ...shop, rounding: file.rounding });
  expect(again.places).toBe('half');
  again.places = '2';
  expect(shopFileOf(again, shop).rounding).toEqual({ denominator: 32, places: 2 });
  expect(file.profile.chisels).toEqual(['1/4', '3/8']);
  expect(file.otherProfile?.chisels).toEqual(['6', '9.5']);
});

test('the shop’s ways, the height of its rip and its moisture hold for jobs of both units; a height left empty is none', () => {
  const draft = shopDraftOf(shop);
  expect([draft.strip, draft.groove, draft.tools.in['blade.ripHeight']]).toEqual(['notch', 'saw', '']);
  draft.strip = 'rip-band-saw';
  draft.groove = 'router';
  draft.tools.mm['blade.ripHeight'] = '50';
  draft.moisture = { atBuild: '7.5', low: '5', high: '13' };
  const { profile, otherProfile } = shopFileOf(draft, shop);
  for (const each of [profile, otherProfile])
    expect(each).toMatchObject({
      ways: { strip: 'rip', groove: 'router' },
      stripStation: 'band-saw',
      moisture: { atBuild: 7.5, low: 5, high: 13 },
    });
  expect(profile.blade).not.toHaveProperty('ripHeight');
  expect(otherProfile?.blade).toMatchObject({ ripHeight: '50' });
  const read = readProfile(otherProfile, 'mm');
  expect(read.ok && shopDraftOf({ ...shop, profile: writeProfile(read.value), units: 'mm' }).strip).toBe(
    'rip-band-saw',
  );
});
