/** Builds when the sources are not those that dist was built from. Build output goes to stderr. True when all is well. */
export function buildIfStale(root: string): boolean;
