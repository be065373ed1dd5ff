import type { OpeningSurvey } from '../job/job.ts';
import { realOf } from '../length/real.ts';
import { distance } from '../outline/outline.ts';
import { apex } from './apex.ts';

/** A corner of the opening, in the job's units; the base lies on an axis. */
export interface Corner {
  readonly x: number;
  readonly y: number;
}

/** The opening's shape from five of its six measures, and what the sixth says of them. */
export interface Quadrilateral {
  readonly base: 'width' | 'height';
  /** Bottom left, bottom right, top right, top left. */
  readonly a: Corner;
  readonly b: Corner;
  readonly c: Corner;
  readonly d: Corner;
  /** How much longer the sixth side comes out than it was measured. */
  readonly closure: number;
}

/**
 * The opening from its two widths, two heights and diagonals, built on the longer of bottom width and left height: a
 * short base turns a small error of the tape into a large one. Null when three of the measures make no triangle.
 */
export function quadrilateral(survey: OpeningSurvey): Quadrilateral | null {
  const [wb, wt, hl, hr] = [
    realOf(survey.widthBottom),
    realOf(survey.widthTop),
    realOf(survey.heightLeft),
    realOf(survey.heightRight),
  ];
  const [up, down] = [realOf(survey.diagonalUp), realOf(survey.diagonalDown)];
  const a = { x: 0, y: 0 };
  if (wb >= hl) {
    const c = apex(wb, up, hr);
    const d = apex(wb, hl, down);
    return c === null || d === null
      ? null
      : { base: 'width', a, b: { x: wb, y: 0 }, c, d, closure: distance(c, d) - wt };
  }
  const b = apex(hl, wb, down);
  const c = apex(hl, up, wt);
  if (b === null || c === null) return null;
  const turned = { b: { x: b.y, y: b.x }, c: { x: c.y, y: c.x } };
  return { base: 'height', a, ...turned, d: { x: 0, y: hl }, closure: distance(turned.b, turned.c) - hr };
}
