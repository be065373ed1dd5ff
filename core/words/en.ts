import { drawingWords } from './drawing.ts';
import { paperWords } from './paper.ts';
import { refusalWords } from './refusals.ts';
import { stageWords } from './stages.ts';
import { whyWords } from './why.ts';

/** All English words, a family a file. Add a family here; keys carry their family as a prefix. */
export const en = { ...stageWords, ...drawingWords, ...paperWords, ...refusalWords, ...whyWords } as const;
