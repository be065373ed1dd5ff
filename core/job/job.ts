import type { Length } from '../length/length.ts';
import type { Units } from '../length/units.ts';

/** The opening as measured: two widths, two heights, and the diagonals from bottom left up (A to C) and from top left down (B to D). */
export interface OpeningSurvey {
  readonly widthBottom: Length;
  readonly widthTop: Length;
  readonly heightLeft: Length;
  readonly heightRight: Length;
  readonly diagonalUp: Length;
  readonly diagonalDown: Length;
}

/** A mid rail: its width, and the height of its centre line above the bottom of the door as built. */
export interface MidRail {
  readonly width: Length;
  readonly centre: Length;
}

/** An arched top rail: the arc's rise, and the straight flat at each side of it. */
export interface Arch {
  readonly kind: 'circular';
  readonly rise: Length;
  readonly flat: Length;
}

/** One door as ordered, every field settled: what the file says, over the job's defaults, over the built-in ones. */
export interface DoorSpec {
  readonly opening: { readonly width: Length; readonly height: Length };
  readonly oversize: { readonly width: Length; readonly height: Length };
  readonly reveal: Length;
  readonly thickness: Length;
  readonly stile: { readonly width: Length };
  /** Only as measured: the right stile's width where it came out other than the left one's. */
  readonly rightStile?: Length;
  readonly bottomRail: { readonly width: Length };
  readonly topRail: { readonly width: Length };
  readonly bead: Length;
  readonly hinge: 'left' | 'right';
  readonly groove: { readonly width: Length; readonly depth: Length };
  readonly tenon: {
    readonly length: Length;
    readonly outerSetback: Length;
    readonly innerSetback: Length;
    /** How far the haunch stays short of the groove's floor, where the groove is deeper than the bead. */
    readonly haunchClearance: Length;
  };
  readonly mortise: { readonly clearance: Length; readonly endPlay: Length };
  readonly horn: Length;
  readonly panel: {
    readonly thickness: Length;
    readonly clearance: Length;
    readonly species?: string;
    readonly sawn?: 'flat' | 'quarter';
  };
  readonly arch: Arch | null;
  readonly midRails: readonly MidRail[];
  readonly survey?: OpeningSurvey;
}

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
  readonly doors: readonly JobDoor[];
}
