import { screenMemory } from '../screen-memory.ts';
import { cardScale } from './card-scale.ts';

const ANSWERED = 'shoulderline.card-offered';
const offer = $state({ answered: screenMemory.getItem(ANSWERED) !== null });

/** Is this a device in the shop's network that was neither measured nor asked to be? At the shop computer nobody is asked. */
export function offersCard(protocol: string): boolean {
  return protocol === 'https:' && !offer.answered && cardScale() === null;
}

/** Whatever came of it: it is not offered again. */
export function cardAnswered(): void {
  screenMemory.setItem(ANSWERED, 'yes');
  offer.answered = true;
}
