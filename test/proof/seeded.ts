/** Random numbers from a seed that can be given again in PROOF_SEED (mulberry32). */
export function seeded(): { readonly seed: number; readonly random: () => number } {
  const seed = Number(process.env.PROOF_SEED ?? Date.now() % 2 ** 31);
  let state = seed;
  return {
    seed,
    random() {
      state = (state + 0x6d2b79f5) | 0;
      let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
      mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
      return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
    },
  };
}
