import type { ShopFile } from '../api/shop-api.ts';
import { USUAL_ROUNDING } from '../length/reading.ts';
import { writeProfile } from './read-profile.ts';
import { builtInProfile } from './shop-profile.ts';

/** The shop before anybody said anything of it. */
export function shopAtFirst(): ShopFile {
  return {
    name: '',
    units: 'in',
    people: [],
    profile: writeProfile(builtInProfile('in')),
    rounding: { ...USUAL_ROUNDING },
    stations: {},
    scanner: { prefix: '', suffix: '' },
    backup: { everyHours: 8, keep: 20 },
  };
}
