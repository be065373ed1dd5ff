import { leftToPare } from '../plan/left-to-pare.ts';
import type { PlanStage, SettingValue } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';
import { hasWords, say, type WordKey } from '../words/say.ts';

/** What a stage is done on, and how its numbers are read. */
export interface HowTo {
  readonly part?: string;
  /** The place that is worked on; the first one where none is given. */
  readonly place?: string;
  /** The job's units: where they are given a stop is told as it is set, short of its line by the chisel's share. */
  readonly units?: Units;
  /** How a length is read; as printed, without idle zeros, where it is not given. */
  readonly read?: (value: SettingValue) => string;
}

/** The lines that say how a stage is done, its numbers in them; none where the drawing and the settings say it all. */
export function howTo(stage: PlanStage, { part = '', place, units, read = plain }: HowTo = {}): string[] {
  const chosen = stage.places?.find(({ at }) => at === place) ?? stage.places?.[0];
  const figures = Object.fromEntries(
    Object.entries({ ...stage.settings, ...chosen?.settings }).map(([name, value]) => [
      name,
      name === 'faceUp' ? value : read(value),
    ]),
  );
  const face = chosen?.settings.faceUp;
  const run = chosen?.settings.run;
  const pared = run === undefined || units === undefined ? null : leftToPare(stage.stage, 'run', run, units);
  const said = {
    ...figures,
    ...(run === undefined ? {} : { set: read(pared?.set ?? run) }),
    ...(chosen?.at === 'top' || chosen?.at === 'bottom' ? { end: say(`value.${chosen.at}`) } : {}),
    ...(face === 'front' || face === 'back' ? { face: say(`value.${face}`) } : {}),
  };
  const family = familyOf(stage.stage);
  const own = `how.${family}.mid`;
  const keys = linesOf(part.startsWith('rail-mid') && hasWords(`${own}.1`) ? own : `how.${family}`);
  return keys.map((key) => say(key, said));
}

/** Stages that are done alike have one text: a stile's mitres, and the notches of its mid rails. */
function familyOf(stage: string): string {
  if (stage.startsWith('mitre-')) return 'mitre-end';
  return stage.startsWith('notch-') ? 'notch' : stage;
}

function linesOf(family: string): WordKey[] {
  const keys: WordKey[] = [];
  for (let k = 1; ; k += 1) {
    const key = `${family}.${k}`;
    if (!hasWords(key)) return keys;
    keys.push(key);
  }
}

function plain(value: SettingValue): string {
  return String(value)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');
}
