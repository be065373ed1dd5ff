/** Random numbers from a seed that can be given again in PROOF_SEED. */
export function seeded(): { readonly seed: number; readonly random: () => number } {
  const seed = Number(process.env.PROOF_SEED ?? Date.now() % 2 ** 31);
  return { seed, random: chances(seed) };
}

/** Chances from 0 up to 1, the same from the same seed (mulberry32). */
export function chances(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
