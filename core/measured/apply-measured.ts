import type { BuiltSpec, DoorSpec } from '../job/job.ts';
import { less, type Length } from '../length/length.ts';
import type { AsCut, DoorAsCut, Measured } from './measured.ts';

/** Has anything been measured that this door's plan depends on beyond the job's own sizes? */
export function doorAsCut(measured: Measured, door: string): DoorAsCut | null {
  return Object.hasOwn(measured.doors, door) ? (measured.doors[door] ?? null) : null;
}

/** A door's inputs with the job's and the door's measured sizes, and the widths of its members as they were cut. */
export function specAsCut(spec: DoorSpec, job: AsCut, door: DoorAsCut | null): BuiltSpec {
  const parts = door?.parts ?? {};
  const width = (part: string): Length | undefined =>
    Object.hasOwn(parts, part) ? parts[part]?.width : undefined;
  const top = width('rail-top');
  const order = spec.midRails.toSorted((a, b) => a.centre.compare(b.centre));
  return {
    ...withSizes(spec, { ...job, ...definedSizes(door) }),
    opening: { ...spec.opening, ...door?.opening },
    ...(door?.survey === undefined ? {} : { survey: door.survey }),
    stile: {
      left: width('stile-left') ?? spec.stile.width,
      right: width('stile-right') ?? spec.stile.width,
    },
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

/** The same door as one part sees it: with that part's own thickness and groove. Null when it has none of its own. */
export function specForPart(spec: BuiltSpec, door: DoorAsCut | null, part: string): BuiltSpec | null {
  const own = door !== null && Object.hasOwn(door.parts, part) ? door.parts[part] : undefined;
  if (own?.thickness === undefined && own?.grooveWidth === undefined) return null;
  return withSizes(spec, own);
}

function withSizes<S extends Pick<DoorSpec, 'thickness' | 'groove'>>(
  spec: S,
  { thickness, grooveWidth }: AsCut,
): S {
  return {
    ...spec,
    ...(thickness === undefined ? {} : { thickness }),
    ...(grooveWidth === undefined ? {} : { groove: { ...spec.groove, width: grooveWidth } }),
  };
}

function definedSizes(door: DoorAsCut | null): AsCut {
  return {
    ...(door?.thickness === undefined ? {} : { thickness: door.thickness }),
    ...(door?.grooveWidth === undefined ? {} : { grooveWidth: door.grooveWidth }),
  };
}
