import { shortName } from '../telling/names.ts';
import { type Language, say } from '../words/say.ts';
import type { Dimension, Drawing } from './model.ts';
import type { Reading, ValueText } from './value-text.ts';

/** How dimensions are written: height of the type, whether by name, in which language, and how their values are read. */
export interface Writing {
  readonly text: number;
  readonly names: boolean;
  readonly language: Language | undefined;
  readonly units: Drawing['units'];
  readonly reading: Reading | undefined;
}

/** A dimension's value with what is written before it. */
export function valueText(shape: Dimension, how: Writing): ValueText {
  const { text, units, reading } = how;
  return { words: nameOf(shape, how), value: shape.value, size: text, units, reading };
}

/** Its name, as on the screen where the machine is set beside the line; nothing where the drawing says it. A name above or below costs the drawing no room. */
function nameOf({ name, side, stage, keepName, isSet }: Dimension, { names, language }: Writing): string {
  if (isSet === true) return say('pare.set', { name: shortName(name, language, stage) }, language);
  const upright = side === 'left' || side === 'right';
  return names || keepName === true || !upright ? shortName(name, language, stage) : '';
}
