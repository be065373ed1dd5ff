import { times } from '../length/length.ts';
import { limitsFor } from '../length/limits.ts';
import { printLength } from '../length/print-length.ts';
import { showDecimal, shownText } from '../length/reading.ts';
import { NO_BREAK } from '../length/unbroken.ts';
import { isPlaceName, placeEnd } from '../plan/place-name.ts';
import type { Place, PlanPart, PlanStage, Settings, SettingValue } from '../plan/plan.ts';
import { settingFacts } from '../plan/set-or-follows.ts';
import { paredAt } from '../settable/pared-at.ts';
import type { Step } from '../settable/step.ts';
import { readStage } from '../stages/stage-id.ts';
import { hasWords, say } from '../words/say.ts';
import { partName, placeName } from './names.ts';

/** What a stage is done on, and how its numbers are read. */
export interface HowTo {
  /** The part in hand, as it is set; none of a stage of the door. */
  readonly part?: Pick<PlanPart, 'part' | 'length' | 'stages'>;
  /** The place that is worked on; the first one where none is given. */
  readonly place?: string;
  /** To what its numbers are settable: where it is given a cut that leaves the chisel's share is told as it is set, beside its line. */
  readonly step?: Step;
  /** How a length is read; as printed, without idle zeros, where it is not given. */
  readonly read?: (value: SettingValue) => string;
}

/** A figure of a step: as it is told; null where it is not here, so that nothing is to be said of it; undefined where there is no such figure at all. */
export type StepFigure = (name: string) => string | null | undefined;

/**
 * The figures that the steps of a stage may name: its settings and those of the place that is worked on, `…Set` where
 * one is set beside its line; `stage_setting`, a setting of another stage of the part; and what the part, the place and the
 * stage's own id say. A length of nothing is not told.
 */
export function stepFigures(stage: PlanStage, { part, place, step, read = plain }: HowTo): StepFigure {
  const places: readonly Place[] = stage.places ?? [];
  const chosen = places.find(({ at }) => at === place) ?? places[0];
  const here: Settings = { ...stage.settings, ...chosen?.settings };
  const end = chosen === undefined ? here.fromEnd : isPlaceName(chosen.at) ? placeEnd(chosen.at) : undefined;
  const share = Object.entries(here).map(([name, value]) => pared(stage, name, value, step)?.share);
  const own: Readonly<Record<string, () => string | null>> = {
    part: () => (part === undefined ? null : partName(part.part)),
    partLength: () => (part === undefined ? null : read(part.length)),
    place: () => (chosen === undefined ? null : placeName(chosen.at)),
    end: () => (end === undefined ? null : inCapitals(end)),
    face: () => (here.faceUp === undefined ? null : inCapitals(here.faceUp)),
    k: () => String(readStage(stage.stage)?.mid?.k ?? '') || null,
    share: () =>
      orNull(
        share.find((each) => each !== undefined),
        read,
      ),
    hair: () => hair(1, step),
    push: () => hair(2, step),
    bottomLines: () => linesFrom('bottom', part, read),
    topLines: () => linesFrom('top', part, read),
  };
  return (name) => {
    if (Object.hasOwn(own, name)) return own[name]?.();
    const [, of, setting] = /^(\w+)_(\w+)$/.exec(name) ?? [];
    if (of !== undefined && setting !== undefined) return ofStage(part, of, setting, read);
    const [, set] = /^(\w+)Set$/.exec(name) ?? [];
    if (set !== undefined && settingFacts(stage.stage, set)?.pared !== undefined) {
      const net = here[set];
      return net === undefined ? null : read(pared(stage, set, net, step)?.set ?? net);
    }
    return toldSetting(stage.stage, name, here[name], read);
  };
}

type Read = (value: SettingValue) => string;

function orNull(value: SettingValue | undefined, read: Read): string | null {
  return value === undefined ? null : read(value);
}

function pared(stage: PlanStage, name: string, value: SettingValue, step: Step | undefined) {
  return step === undefined ? undefined : (paredAt(stage.stage, name, value, step) ?? undefined);
}

/** A setting as it stands in a line; null where the stage lacks it or it is a length of nothing. */
function toldSetting(
  stage: string,
  name: string,
  value: SettingValue | undefined,
  read: Read,
): string | null | undefined {
  const facts = settingFacts(stage, name);
  if (facts === null) return undefined;
  if (value === undefined || value === '0') return null;
  if (facts.is === 'angle') return `${value}°`;
  if (facts.is === 'count') return String(value);
  const word = `named.${value}`;
  return hasWords(word) ? say(word) : read(value);
}

/** A setting of another stage of the same part. */
function ofStage(part: HowTo['part'], stage: string, setting: string, read: Read): string | null | undefined {
  const found = part?.stages.find((each) => each.stage === stage);
  const settings: Settings = found?.settings ?? {};
  return toldSetting(stage, setting, settings[setting], read);
}

/** The lines of a stile's cuts that are left for the chisel, as far as they are measured from this end, in the order of its stages. */
function linesFrom(end: 'bottom' | 'top', part: HowTo['part'], read: Read): string | null {
  const lines = (part?.stages ?? []).flatMap(({ stage, settings }) => {
    const all: Settings = settings;
    if (all.fromEnd !== end) return [];
    return Object.entries(all)
      .filter(([name]) => settingFacts(stage, name)?.pared === 'mitre')
      .map(([, value]) => read(value));
  });
  return lines.length === 0 ? null : lines.join(', ');
}

/** How much a hand-push fit is made up of at so many faces; an inch is told in thousandths. */
function hair(faces: number, step: Step | undefined): string | null {
  if (step === undefined) return null;
  const value = printLength(times(limitsFor(step.units).hair, faces));
  const unit = say(`ui.unit.${step.units === 'mm' ? 'mm' : 'decimals'}`);
  return `${shownText(showDecimal(value, 3))}${NO_BREAK}${unit}`;
}

function inCapitals(value: SettingValue): string {
  const key = `value.${value}`;
  return hasWords(key) ? say(key) : String(value);
}

function plain(value: SettingValue): string {
  return String(value)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');
}
