import { allowWords } from './allow.ts';
import { boardWords } from './board.ts';
import { cautionWords } from './cautions.ts';
import { changeWords } from './changes.ts';
import { deviceWords } from './device.ts';
import { drawingWords } from './drawing.ts';
import { faultWords, leftWords } from './faults.ts';
import { fitWords } from './fit.ts';
import { fittingWords } from './fitting.ts';
import { formWords } from './form.ts';
import { howToWords } from './how-to-words.ts';
import { kioskWords } from './kiosk.ts';
import { movedWords } from './moved.ts';
import { networkWords } from './network.ts';
import { noteWords } from './notes.ts';
import { officeWords } from './office.ts';
import { paperWords } from './paper.ts';
import { readingWords } from './reading.ts';
import { refusalWords } from './refusals.ts';
import { remedyWords } from './remedies.ts';
import { seenWords } from './seen.ts';
import { stageWords } from './stages.ts';
import { stationWords } from './station.ts';
import { troubleWords } from './trouble.ts';
import { whyWords } from './why.ts';

/** All English words, a family a file. Add a family here; keys carry their family as a prefix. */
export const en = {
  ...allowWords,
  ...boardWords,
  ...cautionWords,
  ...changeWords,
  ...deviceWords,
  ...drawingWords,
  ...faultWords,
  ...leftWords,
  ...fitWords,
  ...fittingWords,
  ...formWords,
  ...howToWords,
  ...kioskWords,
  ...movedWords,
  ...networkWords,
  ...noteWords,
  ...officeWords,
  ...paperWords,
  ...readingWords,
  ...refusalWords,
  ...remedyWords,
  ...seenWords,
  ...stageWords,
  ...stationWords,
  ...troubleWords,
  ...whyWords,
} as const;
