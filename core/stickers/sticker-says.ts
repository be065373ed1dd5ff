import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { convertPrinted } from '../job/convert-units.ts';
import { kindOf } from '../stages/stage-id.ts';
import type { PlacedKind, PlaceSettingsOf, SettingsOf, StageKind } from '../stages/table.ts';
import type { PlanPart, PlanStage, SettingValue } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';

/** Raised when a sticker says other figures than before: what an older form said is compared with nothing. */
const FORM = 1;

type SettingName<K extends StageKind> =
  keyof SettingsOf<K> | (K extends PlacedKind ? keyof PlaceSettingsOf<K> : never);

/** The figures of a part's stages that stand on its sticker; those of every place where the stage has places. */
const SAID: { readonly [K in StageKind]?: readonly SettingName<K>[] } = {
  bead: ['bead'],
  groove: ['width', 'depth'],
  slot: ['width', 'depth'],
  mortise: ['depthFromEdge', 'start', 'stop'],
  tenon: ['width'],
  shoulder: ['stop'],
  haunch: ['length', 'height'],
  mitre: ['sightEdge'],
  arch: ['radius', 'rise'],
  cutout: ['sideHeight', 'radius'],
  raise: ['tongue', 'band'],
};
const known = new WeakMap<PlanPart, string>();

/**
 * A short sum over every figure on a part's sticker, whatever the words around them and the units they stand in: kept when
 * the sticker is printed, it tells later whether the sizes are still those.
 */
export function stickerSays(part: PlanPart, units: Units): string {
  const before = known.get(part);
  if (before !== undefined) return before;
  const figure = (value: SettingValue) => String(convertPrinted(value, units, 'mm'));
  const text = [
    [part.length, part.width, part.thickness].map(figure),
    ...part.stages
      .map((stage) => [stage.stage, ...figuresOf(stage, figure)])
      .filter(({ length }) => length > 1),
  ];
  const says = `${FORM}:${bytesToHex(sha256(utf8ToBytes(JSON.stringify(text))).subarray(0, 5))}`;
  known.set(part, says);
  return says;
}

/** Was this sticker printed before the sizes on it changed? Not known, and so no, of one whose figures were not kept. */
export function isOutdated(printed: string | undefined, part: PlanPart, units: Units): boolean {
  return isOtherSum(printed, () => stickerSays(part, units));
}

/** The same of a sticker of which it is known by its sum what it would say now. */
export function isOtherSum(printed: string | undefined, now: () => string): boolean {
  return printed?.startsWith(`${FORM}:`) === true && printed !== now();
}

function figuresOf(
  { stage, settings, places = [] }: PlanStage,
  figure: (value: SettingValue) => string,
): string[] {
  const kind = kindOf(stage);
  const names: readonly string[] = kind === null ? [] : (SAID[kind] ?? []);
  const among = (some: Readonly<Record<string, SettingValue>>) =>
    names.flatMap((name) => {
      const value = Object.hasOwn(some, name) ? some[name] : undefined;
      return value === undefined ? [] : [`${name} ${figure(value)}`];
    });
  return [
    ...among(settings),
    ...places.flatMap(({ at, settings: own }) => among(own).map((each) => `${at} ${each}`)),
  ];
}
