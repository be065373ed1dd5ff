import type { Words } from '../language.ts';

/** Der Rechner der Werkstatt unter einer anderen Adresse. */
export const moved: Words = {
  'api.moved-here': 'Das tut nur eine Seite, die von einer anderen Adresse des Rechners der Werkstatt kam.',
  'api.moved-over':
    'Dieses Gerät war zu lange unterwegs oder ist schon angekommen. Öffnen Sie die Station noch einmal unter ihrer alten Adresse, oder koppeln Sie das Gerät hier.',
};
