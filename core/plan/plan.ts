import type { Units } from '../length/units.ts';
import type { StageId } from '../stages/stage-id.ts';
import type { StationId } from '../stages/stations.ts';
import type { PlacedKind, PlaceSettingsOf, SettingsOf, StageKind } from '../stages/table.ts';
import type { EachSide } from './each-side.ts';
import type { PartName } from './part-name.ts';
import type { PlaceName } from './place-name.ts';
import type { FigureTable } from './figure.ts';

/** A printed value: an exact fraction in lowest terms, a string with six decimals where the fractions are left, a count, or a word. */
export type SettingValue = string | number;
/** The settings of a stage of whatever kind, by name; names stay for ever. */
export type Settings = Readonly<Record<string, SettingValue>>;

/** Where a setting is measured from, in words and by its key, and how it was reckoned, in words with its figures. */
export interface Why {
  readonly from: string;
  readonly datum: string;
  readonly reason: string;
}

/** Why each setting is what it is, by its name. */
export type WhyTable = Readonly<Record<string, Why>>;

/** By how much a setting may be off, all others exact: exact lengths in the job's units; and in words what bounds each side. */
export interface Allowed {
  readonly less: string;
  readonly more: string;
  readonly lessBy?: string;
  readonly moreBy?: string;
}

/** By how much each setting may be off, by its name, where that is known. */
export type AllowTable = Readonly<Record<string, Allowed>>;

/** One place of a stage that is set more than once on the same part: the mortises and strips of a stile. */
export interface PlaceOf<K extends PlacedKind> {
  readonly at: PlaceName;
  readonly settings: PlaceSettingsOf<K>;
  readonly why?: WhyTable;
  readonly allow?: AllowTable;
}

/** One stage of a kind, of a part or a door: where it is done, what is set there, and what comes before it. */
export type StageOf<K extends StageKind> = {
  readonly stage: StageId<K>;
  readonly station: StationId;
  readonly settings: SettingsOf<K>;
  readonly after: readonly StageId[];
  readonly why?: WhyTable;
  readonly allow?: AllowTable;
} & (K extends PlacedKind ? { readonly places: readonly PlaceOf<K>[] } : { readonly places?: never });

/** A stage of whatever kind: its id tells which. */
export type PlanStage = { [K in StageKind]: StageOf<K> }[StageKind];
/** A place of whatever kind of stage. */
export type Place = { [K in PlacedKind]: PlaceOf<K> }[PlacedKind];

/** One part as cut: lengths in the job's units; a panel's length is its height. */
export interface PlanPart {
  readonly part: PartName;
  readonly code: string;
  readonly length: string;
  readonly width: string;
  readonly thickness: string;
  readonly stages: readonly PlanStage[];
}

/** What of a stage tells how far something has come: its id, where it is done, and what comes before it. */
export type StageStep = Pick<PlanStage, 'stage' | 'station' | 'after'>;

/** A part by its stages alone. */
export interface PartSteps {
  readonly part: PartName;
  readonly code: string;
  readonly stages: readonly StageStep[];
}

/** A door by its stages alone: enough to judge a mark and to tell how far it has come. */
export interface DoorSteps {
  readonly door: string;
  readonly mark: string;
  readonly parts: readonly PartSteps[];
  readonly stages: readonly StageStep[];
}

/** What a foreman would say about a door that can be built. Faults are never notes. */
export interface Note {
  readonly id: string;
  readonly level: 'warning' | 'advice';
  readonly path: string;
  /** Only of one that was kept in words: it stays as it was said. */
  readonly message?: string;
  readonly figures: FigureTable;
}

/** An amount to come off one edge at its two ends. */
export interface TakeOff {
  readonly left: { readonly bottom: string; readonly top: string };
  readonly right: { readonly bottom: string; readonly top: string };
  readonly bottom: { readonly left: string; readonly right: string };
  readonly top: { readonly left: string; readonly right: string };
}

/** What the door as a whole measures. Trims do not count the horns. */
export interface DoorValues {
  readonly sightWidth: string;
  readonly shoulderToShoulder: string;
  readonly sightHeights: readonly string[];
  readonly finishedWidth: string;
  readonly finishedHeight: string;
  /** Plans kept by older versions lack it: `trimOf` reads both. */
  readonly trim?: EachSide<string>;
  /** Only where left and right are alike, and bottom and top. */
  readonly trimEachSide?: string;
  readonly trimEachEnd?: string;
  readonly survey?: {
    readonly closure: string;
    readonly base: 'width' | 'height';
    readonly takeOff: TakeOff;
  };
}

/** One door of the job: what it measures, its parts from the stiles to the panels, its own stages, and what a foreman would say. */
export interface PlanDoor {
  readonly door: string;
  readonly mark: string;
  readonly values: DoorValues;
  readonly parts: readonly PlanPart[];
  readonly stages: readonly PlanStage[];
  readonly notes: readonly Note[];
}

/** Everything that follows from a job file: all that stickers, screens and drawings are made from. */
export interface Plan {
  readonly format: 1;
  readonly id: string;
  readonly job: string;
  readonly units: Units;
  readonly doors: readonly PlanDoor[];
}
