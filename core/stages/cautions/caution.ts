import type { WordKey } from '../../words/say.ts';
import type { StationId } from '../stations.ts';

/** A caution by the key of its words: of a kind of stage, or of a station whatever is done there. */
export type CautionKey = Extract<WordKey, `caution.${string}.${string}`>;

/**
 * Where a caution is from; its title, publisher and year are words. What was read of them, and what not:
 * the eTool's pages of table saws, band saws, boring and mortising and the point of operation; 1910.213 (a)(15), (c)(1),
 * (c)(2), (d)(1), (i)(1), (l)(2) and (s)(9) as quoted by who applies them, that the splitter goes on again after a groove
 * and that the switch is in reach (b)(1) from memory; 1910.107 (g)(3), which is for spray finishing; of OSHA 3157 what it
 * says of routers, as quoted; the first pages of the Health and Safety Executive's sheets, and of its L114 the scope only:
 * that grooving and tenoning on a saw wants a guard of its own, and work holders, is told of it from memory.
 */
export type SourceId = { [K in WordKey]: K extends `office.source.${infer S}` ? S : never }[WordKey];

/** What a caution's words say in figures. */
export type CautionFigure = 'bladeHeight' | 'widestBlade';

/** One thing that can hurt. It does not compile without a source. */
export interface Caution {
  readonly key: CautionKey;
  readonly from: readonly [SourceId, ...SourceId[]];
  /** The station where it holds, other than the stage's usual one: the shop may do a stage elsewhere. */
  readonly at?: StationId;
  /** Only of parts with an arch, a rail's or a panel's; or only of parts without one. */
  readonly of?: 'arched' | 'straight';
  /** The figure in its words: where the plan does not give it, the caution is not told. */
  readonly needs?: CautionFigure;
}

/** The cautions of a kind of stage, the gravest first: the first that holds for a part is that part's gravest. */
export type Cautions = readonly [Caution, Caution, Caution, ...Caution[]];
