import { type Length, less, sign, ZERO } from '../length/length.ts';
import { printLength } from '../length/print-length.ts';
import { printReal } from '../length/real.ts';
import type { Plan } from '../plan/plan.ts';
import type { Tolerances } from '../shop/shop-profile.ts';
import type { Closure, Source, Verdict } from './closure.ts';
import { jobFit } from './job-fit.ts';

/** A closure as it is printed: exact lengths, a minus sign before one under zero; likely ones with six decimals. */
export interface PrintedClosure {
  readonly id: Closure['id'];
  readonly parts: readonly string[];
  readonly exact: string;
  readonly least?: string;
  readonly most?: string;
  readonly worst: { readonly least: string; readonly most: string };
  readonly likely: { readonly least: string; readonly most: string };
  readonly verdict: Verdict;
  readonly gate: Pick<Source, 'part' | 'stage' | 'setting' | 'at'>;
}

/** How a job closes, as it is printed. */
export interface PrintedFit {
  readonly format: 1;
  readonly id: string;
  readonly job: string;
  readonly units: Plan['units'];
  readonly tolerances: Readonly<Record<keyof Tolerances, string>>;
  readonly kinds: readonly {
    readonly doors: readonly string[];
    readonly closures: readonly PrintedClosure[];
  }[];
}

/** How a job closes by these ±: all of it, kinds of doors in the plan's order. */
export function printFit(plan: Plan, tolerances: Tolerances): PrintedFit {
  return {
    format: 1,
    id: plan.id,
    job: plan.job,
    units: plan.units,
    tolerances: {
      fence: printLength(tolerances.fence),
      stop: printLength(tolerances.stop),
      height: printLength(tolerances.height),
      milling: printLength(tolerances.milling),
    },
    kinds: jobFit(plan, tolerances).map(({ doors, closures }) => ({
      doors,
      closures: closures.map(printClosure),
    })),
  };
}

function printClosure({
  id,
  parts,
  room,
  least,
  most,
  worst,
  likely,
  verdict,
  gate,
}: Closure): PrintedClosure {
  const { part, stage, setting, at } = gate;
  return {
    id,
    parts: [...new Set(parts)],
    exact: signed(room),
    ...(least === null ? {} : { least: signed(least) }),
    ...(most === null ? {} : { most: signed(most) }),
    worst: { least: signed(worst.least), most: signed(worst.most) },
    likely: { least: printReal(likely.least), most: printReal(likely.most) },
    verdict,
    gate: { part, stage, setting, ...(at === undefined ? {} : { at }) },
  };
}

function signed(value: Length): string {
  return sign(value) < 0 ? `-${printLength(less(ZERO, value))}` : printLength(value);
}
