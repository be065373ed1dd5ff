import { SPECIES, type Species } from './species.ts';

/**
 * The species that a name means: the table's own name, or its words in any order ("black cherry"), or as many of them
 * as fit one species only ("cherry"). Null when none or several fit.
 */
export function findSpecies(name: string): Species | null {
  const asked = wordsOf(name);
  if (asked.length === 0) return null;
  const same = SPECIES.filter((each) => wordsOf(each).toSorted().join() === asked.toSorted().join());
  const fitting =
    same.length > 0 ? same : SPECIES.filter((each) => asked.every((word) => wordsOf(each).includes(word)));
  return fitting.length === 1 ? (fitting[0] ?? null) : null;
}

function wordsOf(name: string): string[] {
  return name.toLowerCase().match(/[a-z]+/g) ?? [];
}
