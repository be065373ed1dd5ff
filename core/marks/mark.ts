import type { StationId } from '../stages/stations.ts';

/** What a person at a station says of a part, or, by any live part of it, of a door. */
export interface Mark {
  /** A uuid made by the sender; the same id is never applied twice. */
  readonly id: string;
  readonly code: string;
  readonly station: StationId;
  readonly stage: string;
  readonly mark: 'done' | 'undo' | 'spoiled' | 'proved';
  readonly by?: string;
  readonly reason?: string;
  /** The sender's clock, ISO 8601. It orders nothing. */
  readonly at: string;
}

/** A mark that was answered: with the sequence number that orders it, the hub's clock, and what it belongs to. */
export interface AcceptedMark {
  readonly seq: number;
  readonly received: string;
  readonly job: string;
  readonly door: string;
  readonly part: string;
  readonly mark: Mark;
  /** With mark "spoiled": the part that takes its place. */
  readonly replacement?: { readonly code: string; readonly number: number };
}

/** When, where and by whom something was done. */
export interface Done {
  readonly seq: number;
  readonly id: string;
  readonly at: string;
  readonly station: StationId;
  readonly by?: string;
}

/** What has happened to one part. Plain JSON, so that a station can keep it and a snapshot can hold it. */
export interface PartProgress {
  readonly code: string;
  readonly door: string;
  readonly part: string;
  /** 0 for the first blank, 1 for its first replacement … */
  readonly number: number;
  readonly done: Readonly<Record<string, Done>>;
  readonly proved: Readonly<Record<string, Done>>;
  readonly spoiled?: Done & { readonly stage: string; readonly reason?: string };
  readonly replacedBy?: string;
}

/** What has happened to one job: a fold over its accepted marks, nothing else. */
export interface JobProgress {
  readonly job: string;
  /** The last sequence number folded in. */
  readonly seq: number;
  readonly parts: Readonly<Record<string, PartProgress>>;
  readonly doors: Readonly<Record<string, { readonly done: Readonly<Record<string, Done>> }>>;
}

/** Why a mark was refused: the stable codes of the API. */
export const REFUSALS = [
  'stage-not-reached',
  'already-done',
  'wrong-station',
  'not-done',
  'later-stage-done',
  'spoiled',
  'id-reused',
  'malformed',
  'bad-check',
  'unknown-code',
  'binned',
] as const;
/** Why a mark is not taken, by its stable code. */
export type Refusal = (typeof REFUSALS)[number];
