/** Builds when the sources are not those that dist was built from. Build output goes to stderr. True when all is well. */
export function buildIfStale(root: string): boolean;
/** Was dist built whole, from just these sources? */
export function isBuilt(root: string): boolean;
/** Dist counts as stale until what this gives is called. */
export function buildBegins(root: string): () => void;
