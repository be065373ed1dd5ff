import type { WordKey } from '../words/say.ts';
import type { Cautions } from './cautions/caution.ts';
import type { SettingTable } from './setting.ts';
import type { StationId } from './stations.ts';
import type { StepTable } from './steps.ts';

/** The title of a stage by its key. */
export type TitleKey = Extract<WordKey, `stage.${string}`>;

/** What is known of a kind of stage whatever the door. Its draft is in core/joint, its drawing in core/views. */
export interface StageFacts {
  /** Where it is done unless the shop does it elsewhere. */
  readonly station: StationId;
  /** One part at a time, or the door as a whole with any of its live parts standing for it. */
  readonly of: 'part' | 'door';
  readonly settings: SettingTable;
  /** What is set at each of its places, where there are several. */
  readonly place?: SettingTable;
  /** Its title; of a kind with an id for each end or mid rail, the titles of all of them. */
  readonly title: TitleKey | readonly TitleKey[];
  /** The kind whose names for settings are its own too, where that is another. */
  readonly namedAs?: string;
  /** What can hurt at it, the gravest first. */
  readonly cautions: Cautions;
  /** How it is done; none where all there is to it stands on its set-up. */
  readonly steps?: StepTable;
  /** What is said where nothing is set at it. */
  readonly nothingToSet?: Extract<WordKey, `nothing.${string}`>;
  /** A part that has it is arched. */
  readonly arches?: true;
  /** It makes the groove: its width is the groove's. */
  readonly grooves?: true;
  /** It gathers all parts of a door. */
  readonly gathers?: true;
  /** After it no part of the door can be made anew. */
  readonly closes?: true;
  /** It fits the door to its opening, by a survey where there is one. */
  readonly fits?: true;
  /** A door that has passed it is finished. */
  readonly finishes?: true;
}
