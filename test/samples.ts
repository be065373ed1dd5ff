/** Do the proofs run? Then every test that they share with `npm test` runs in full. */
export const inFull = process.env.PROOF_IN_FULL !== undefined;

/** How many samples a test draws: enough to guard a change, or as many as a proof takes. */
export function samples(usual: number, full: number): number {
  return inFull ? full : usual;
}
