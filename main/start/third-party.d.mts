/** A package of the lock file. */
export interface LockedPackage {
  readonly path: string;
  readonly name: string;
  readonly version: string;
  readonly license: string;
  readonly dev: boolean;
}
/** Development packages that the build puts into the screens. */
export const BUNDLED: readonly string[];
/** Every package of the lock file. */
export function lockedPackages(root: string): LockedPackage[];
/** Those that go with the program, by name and version. */
export function shippedPackages(root: string): LockedPackage[];
/** The text of THIRD-PARTY-NOTICES.md. */
export function thirdPartyNotices(root: string): string;
/** Where the notices lie. */
export const NOTICES: string;
/** The notices as they lie in the tree; empty where there are none. */
export function writtenNotices(root: string): string;
