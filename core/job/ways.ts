import type { Fields } from '../fields/shape.ts';

/** How a shop makes the cuts that can be made in two ways. */
export interface Ways {
  /** The bead behind the rails: crosscuts side by side, or a stopped rip. */
  readonly strip: 'notch' | 'rip';
  /** The groove of a straight member: a dado head on the saw; or a slot cutter, where dado heads are not lawful or not there. */
  readonly groove: 'saw' | 'router';
}

/** Ways as a file says them. */
export const WAY_FIELDS = {
  strip: { kind: 'word', of: ['notch', 'rip'] },
  groove: { kind: 'word', of: ['saw', 'router'] },
} as const satisfies Fields;

/** The ways of a shop that says none. Notching has no stopped cut. Common practice, no source. */
export const BUILT_IN_WAYS: Ways = { strip: 'notch', groove: 'saw' };
