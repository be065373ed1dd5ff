import type { Words } from '../language.ts';
import { cautionsByHand } from './cautions/by-hand.ts';
import { cautionsOfCurves } from './cautions/curves.ts';
import { cautionsOfRouting } from './cautions/routing.ts';
import { cautionsOfSawing } from './cautions/sawing.ts';
import { cautionsAtStations } from './cautions/stations.ts';

/** What can hurt, at each stage and at each station, and what comes before anything said here. */
export const cautions: Words = {
  'caution.first': 'Vor allem gelten Betriebsanleitung, örtliche Vorschriften und Unterweisung.',
  'caution.short': 'Kürzer als {least}: nie mit der Hand vorschieben; eine Zuführlade nehmen.',
  ...cautionsAtStations,
  ...cautionsOfCurves,
  ...cautionsOfRouting,
  ...cautionsOfSawing,
  ...cautionsByHand,
};
