import { arch, smooth } from './arch.ts';
import { dryfit, glue, trim } from './door.ts';
import { mill } from './mill.ts';
import { mitre, mitreEnd } from './mitre.ts';
import { mortise, pare } from './mortise.ts';
import { cutout, finish, raise } from './panel.ts';
import type { PrintedSettings } from './setting.ts';
import type { StageFacts } from './stage-facts.ts';
import { bead, groove, slot } from './sticking.ts';
import { clean, notch, strip } from './strip.ts';
import { cheek, haunch, shoulder, tenon } from './tenon.ts';

/** Every kind of stage. Nothing else knows a stage by name but its draft in core/joint and its drawing in core/views. */
export const STAGES = {
  mill,
  arch,
  smooth,
  bead,
  groove,
  slot,
  mortise,
  pare,
  'mitre-end': mitreEnd,
  notch,
  strip,
  clean,
  shoulder,
  cheek,
  mitre,
  tenon,
  haunch,
  cutout,
  raise,
  finish,
  dryfit,
  glue,
  trim,
} as const satisfies Readonly<Record<string, StageFacts>>;

/** A kind of stage: all that are done alike, whichever end or mid rail they are for. */
export type StageKind = keyof typeof STAGES;
/** All kinds. */
export const STAGE_KINDS = Object.keys(STAGES) as StageKind[];

/** What is known of a kind of stage. */
export function factsOf(kind: StageKind): StageFacts {
  return STAGES[kind];
}

type Table = typeof STAGES;

/** The kinds that a door as a whole passes; each has one stage. */
type DoorKind = { [K in StageKind]: Table[K]['of'] extends 'door' ? K : never }[StageKind];
/** Stages that belong to the door as a whole, in order. */
export const DOOR_STAGES = STAGE_KINDS.filter((kind): kind is DoorKind => factsOf(kind).of === 'door');

/** The kinds that are set at several places of a part. */
export type PlacedKind = {
  [K in StageKind]: Table[K] extends { readonly place: unknown } ? K : never;
}[StageKind];
/** The table of a kind's settings. */
export type SettingTableOf<K extends StageKind> = Table[K]['settings'];
/** The table of what is set at each place of a kind that has several. */
export type PlaceTable<K extends PlacedKind> = Table[K]['place'];

/** The settings of a kind of stage as the plan prints them. */
export type SettingsOf<K extends StageKind> = PrintedSettings<SettingTableOf<K>>;
/** The settings of one place of a kind of stage that has several. */
export type PlaceSettingsOf<K extends PlacedKind> = PrintedSettings<PlaceTable<K>>;
