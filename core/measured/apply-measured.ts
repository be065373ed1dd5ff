import type { BuiltSpec, DoorSpec } from '../job/job.ts';
import { less, type Length, smaller } from '../length/length.ts';
import { parsePart } from '../plan/part-name.ts';
import { type AsCut, type DoorAsCut, type Measured, partSizes } from './measured.ts';
import { asCutOf } from './nominals.ts';

/** Has anything been measured that this door's plan depends on beyond the job's own sizes? */
export function doorAsCut(measured: Measured, door: string): DoorAsCut | null {
  return Object.hasOwn(measured.doors, door) ? (measured.doors[door] ?? null) : null;
}

/** A door's inputs with the job's and the door's measured sizes, and the widths of its members as they were cut. */
export function specAsCut(
  spec: DoorSpec,
  job: Pick<Measured, 'thickness' | 'grooveWidth'>,
  door: DoorAsCut | null,
): BuiltSpec {
  const width = (part: string): Length | undefined => partSizes(door, part).width;
  const top = width('rail-top');
  const order = spec.midRails.toSorted((a, b) => a.centre.compare(b.centre));
  const sized = withSizes(spec, {
    thickness: door?.thickness ?? asCutOf(job.thickness, spec.thickness),
    grooveWidth: door?.grooveWidth ?? asCutOf(job.grooveWidth, spec.groove.width),
  });
  const groove = (stile: string): Length => partSizes(door, stile).grooveWidth ?? sized.groove.width;
  return {
    ...sized,
    opening: { ...spec.opening, ...door?.opening },
    ...(door?.survey === undefined ? {} : { survey: door.survey }),
    stile: {
      left: width('stile-left') ?? spec.stile.width,
      right: width('stile-right') ?? spec.stile.width,
    },
    stileGroove: smaller(groove('stile-left'), groove('stile-right')),
    bottomRail: { width: width('rail-bottom') ?? spec.bottomRail.width },
    topRail: {
      width: top === undefined ? spec.topRail.width : spec.arch === null ? top : less(top, spec.arch.rise),
    },
    midRails: spec.midRails.map((rail) => ({
      ...rail,
      width: width(`rail-mid-${order.indexOf(rail) + 1}`) ?? rail.width,
    })),
  };
}

/**
 * The same door as one part sees it, with that part's own thickness and groove: a panel's thickness is its own, and its
 * tongue goes into the narrowest groove round it. Null when nothing of it is its own.
 */
export function specForPart(spec: BuiltSpec, door: DoorAsCut | null, part: string): BuiltSpec | null {
  if (door === null) return null;
  const own = partSizes(door, part);
  const read = parsePart(part);
  if (read?.kind !== 'panel')
    return own.thickness === undefined && own.grooveWidth === undefined ? null : withSizes(spec, own);
  const round = ['stile-left', 'stile-right', ...railsRound(spec, read.at === 'numbered' ? read.k : 1)];
  const grooves = round.map((each) => partSizes(door, each).grooveWidth ?? spec.groove.width);
  const narrowest = own.grooveWidth ?? grooves.reduce(smaller);
  if (own.thickness === undefined && narrowest.equals(spec.groove.width)) return null;
  return {
    ...withSizes(spec, { grooveWidth: narrowest }),
    panel: { ...spec.panel, ...(own.thickness === undefined ? {} : { thickness: own.thickness }) },
  };
}

/** The rails below and above a panel, the k-th from the bottom. */
function railsRound({ midRails }: BuiltSpec, k: number): string[] {
  const rail = (at: number): string =>
    at === 0 ? 'rail-bottom' : at > midRails.length ? 'rail-top' : `rail-mid-${at}`;
  return [rail(k - 1), rail(k)];
}

/** Sizes, of which some may not have been measured. */
type Sizes = { readonly [Name in keyof AsCut]: AsCut[Name] | undefined };

function withSizes<S extends Pick<DoorSpec, 'thickness' | 'groove'>>(
  spec: S,
  { thickness, grooveWidth }: Sizes,
): S {
  return {
    ...spec,
    ...(thickness === undefined ? {} : { thickness }),
    ...(grooveWidth === undefined ? {} : { groove: { ...spec.groove, width: grooveWidth } }),
  };
}
