import type { SettledFields } from '../fields/read.ts';
import type { Length } from '../length/length.ts';
import type { Units } from '../length/units.ts';
import type { DOOR_FIELDS } from './door-shape.ts';
import type { Moisture } from './moisture.ts';
import type { Ways } from './ways.ts';

/** One door as ordered, every field settled: what the file says, over the job's defaults, over the built-in ones. */
export type DoorSpec = SettledFields<typeof DOOR_FIELDS>;

/** One door as it is built: what was ordered, or else as it came out, each stile with a width of its own. */
export type BuiltSpec = Omit<DoorSpec, 'stile'> & {
  readonly stile: { readonly left: Length; readonly right: Length };
  /** How wide the narrower of its stiles is grooved: so thick are its tenons. */
  readonly stileGroove: Length;
};

/** The opening as measured. */
export type OpeningSurvey = NonNullable<DoorSpec['survey']>;

/** A mid rail of a door. */
export type MidRail = DoorSpec['midRails'][number];

/** Doors of one mark: as many alike as the quantity says. */
export interface JobDoor {
  readonly mark: string;
  readonly quantity: number;
  /** Where it stands in the job file, for faults and notes: "doors[0]". */
  readonly path: string;
  readonly spec: DoorSpec;
}

/** A job file that has been read: no field open. */
export interface Job {
  readonly id: string;
  readonly job: string;
  readonly due?: string;
  readonly units: Units;
  /** The ways that this job is made in where they are not the shop's. */
  readonly ways?: Partial<Ways>;
  /** Of this job's wood and place, where it is not the shop's. */
  readonly moisture?: Moisture;
  readonly doors: readonly JobDoor[];
}
