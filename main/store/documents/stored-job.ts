import { crc32, gunzipSync } from 'node:zlib';
import type { Fault } from '#core/fields/fault.ts';
import type { PartName } from '#core/plan/part-name.ts';
import { isPlanStage } from '#core/plan/is-plan-stage.ts';
import type { PlanStage } from '#core/plan/plan.ts';
import type { JobDocument } from './job-document.ts';
import type { JobIndex } from './job-index.ts';
import type { JobSummary } from './job-summary.ts';
import { type PlanLine, planLine } from './plan-lines.ts';

/** What a part measures and what is set at one of its stages. */
export interface PartInFull {
  readonly length: string;
  readonly width: string;
  readonly thickness: string;
  readonly stages: readonly PlanStage[];
  /** Those of its door. */
  readonly doorStages: readonly PlanStage[];
}

/** Where the packed lines of a job's plan are read from, piece by piece. */
export interface PlanReader {
  slice(from: number, to: number): Promise<Uint8Array>;
}

/** So many kinds of doors stay read: a station works on one door after another of a kind. */
const STAY = 8;

/** What is kept of a job's plan does not stand there as it was written. */
export class PlanDamaged extends Error {}

/** A job that the hub holds: its document, the index of its plan, and where that plan is read from. The plan itself it never holds. */
export class StoredJob {
  readonly document: JobDocument;
  readonly summary: JobSummary;
  readonly index: JobIndex;
  /** Why this version makes no plan of it: it shows the last one until somebody has corrected the job. */
  readonly faults: readonly Fault[];
  /** It has not even a last plan: what it shows is what can be reckoned in spite of its faults. */
  readonly anyway: boolean;
  /** The packed lines of its plan where they are few, or lie nowhere else. */
  readonly lines: Uint8Array | null;
  readonly #reader: PlanReader | null;
  readonly #recent = new Map<number, PlanLine>();

  constructor(of: {
    readonly document: JobDocument;
    readonly hash: string;
    readonly index: JobIndex;
    readonly faults?: readonly Fault[];
    readonly anyway?: boolean;
    readonly lines: Uint8Array | null;
    readonly reader: PlanReader | null;
  }) {
    const { document, hash, index, faults = [], anyway = false, lines, reader } = of;
    const { job, due, units, doors, parts } = index.head;
    this.document = document;
    this.index = index;
    this.summary = {
      id: document.id,
      hash,
      job,
      ...(due === undefined ? {} : { due }),
      units,
      doors,
      parts,
    };
    this.faults = faults;
    this.anyway = anyway;
    this.lines = lines;
    this.#reader = reader;
  }

  /** The same plan for a document that differs in nothing that a plan hangs on. */
  with(document: JobDocument): StoredJob {
    const { index, faults, anyway, lines, summary } = this;
    return new StoredJob({
      document,
      hash: summary.hash,
      index,
      faults,
      anyway,
      lines,
      reader: this.#reader,
    });
  }

  /** What is set on a part of a door; undefined where the door has no such part. Throws PlanDamaged where that does not stand there as it was written. */
  async part(door: string, part: PartName): Promise<PartInFull | undefined> {
    const at = this.index.doorNamed(door);
    if (at === undefined) return undefined;
    const line = await this.#line(at);
    if (!('alike' in line)) return undefined;
    const found = line.alike.parts.find((each) => each.part === part);
    if (found === undefined) return undefined;
    const { length, width, thickness, stages } = found;
    return {
      length,
      width,
      thickness,
      stages: planStages(stages),
      doorStages: planStages(line.alike.stages),
    };
  }

  async #line(at: number): Promise<PlanLine> {
    const { kind, from, to, sum } = this.index.line(at);
    const known = this.#recent.get(kind);
    if (known !== undefined) return known;
    const packed = this.lines?.subarray(from, to) ?? (await this.#reader?.slice(from, to));
    if (packed === undefined || crc32(packed) !== sum) throw new PlanDamaged();
    const line = planLine.parse(JSON.parse(gunzipSync(packed).toString('utf8')));
    this.#recent.set(kind, line);
    for (const [oldest] of this.#recent) {
      if (this.#recent.size <= STAY) break;
      this.#recent.delete(oldest);
    }
    return line;
  }
}

function planStages(read: Extract<PlanLine, { alike: unknown }>['alike']['stages']): PlanStage[] {
  return read.filter((stage) => isPlanStage(stage));
}
