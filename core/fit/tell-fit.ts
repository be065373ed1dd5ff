import { shownText, showDecimal } from '../length/reading.ts';
import { type Length, less, sign, ZERO } from '../length/length.ts';
import { printReal, type Real } from '../length/real.ts';
import { typeLength } from '../length/type-length.ts';
import { unbroken } from '../length/unbroken.ts';
import type { Units } from '../length/units.ts';
import { partName, settingName, stageName } from '../telling/names.ts';
import { type Language, say } from '../words/say.ts';
import type { Closure } from './closure.ts';

/** A closure as a table has it: texts to be read. */
export interface ToldClosure {
  readonly what: string;
  readonly parts: string;
  readonly exact: string;
  readonly needs: string;
  readonly worst: string;
  readonly likely: string;
  readonly watch: string;
  /** What is to be said of one that closes only by luck, or not at all; null where it closes. */
  readonly warning: string | null;
}

/** Likely room is read to a thousandth of an inch, to a hundredth of a millimetre. */
const PLACES: Readonly<Record<Units, number>> = { in: 3, mm: 2 };

/** A closure in words, its lengths as they are typed in these units. */
export function tellClosure(closure: Closure, units: Units, language?: Language): ToldClosure {
  const read = (value: Length): string =>
    `${sign(value) < 0 ? '−' : ''}${unbroken(typeLength(sign(value) < 0 ? less(ZERO, value) : value, units))}`;
  const near = (value: Real): string =>
    shownText({ ...showDecimal(printReal(value), PLACES[units]), near: false }).replace('-', '−');
  const { part, stage, setting } = closure.gate;
  const told = {
    what: say(`office.fit.of.${closure.id}`, {}, language),
    parts: [...new Set(closure.parts)].map((each) => partName(each, language)).join(', '),
    exact: read(closure.room),
    needs: needs(closure, read, language),
    worst: say(
      'office.fit.range',
      { least: read(closure.worst.least), most: read(closure.worst.most) },
      language,
    ),
    likely: say(
      'office.fit.range',
      { least: near(closure.likely.least), most: near(closure.likely.most) },
      language,
    ),
    watch: say(
      'office.fit.watched',
      {
        part: partName(part, language),
        setting: settingName(setting, language, stage),
        stage: stageName(stage, language),
      },
      language,
    ),
  };
  return { ...told, warning: warning(closure, told, language) };
}

function needs({ least, most }: Closure, read: (value: Length) => string, language?: Language): string {
  if (least !== null && most !== null)
    return say('office.fit.between', { least: read(least), most: read(most) }, language);
  if (most !== null) return say('office.fit.at-most', { most: read(most) }, language);
  return say('office.fit.at-least', { least: read(least ?? ZERO) }, language);
}

function warning(
  { verdict }: Closure,
  told: Omit<ToldClosure, 'warning'>,
  language?: Language,
): string | null {
  if (verdict === 'closes') return null;
  return say(`office.fit.${verdict === 'open' ? 'apart' : verdict}`, { ...told }, language);
}
