/** The hub at another address than that of this page. */
export interface Elsewhere {
  readonly origin: string;
  /** By what it knows this device there; none is sent before the hub has proved that it knows it. */
  readonly token?: string;
}

/** Where marks are sent while the hub is not at the address of this page; null sends them there. */
let now: Elsewhere | null = null;

/** From now on marks are sent there; null to the address of this page again. */
export function sendTo(elsewhere: Elsewhere | null): void {
  now = elsewhere;
}

/** What goes with a mark to where it is sent. */
export function sentTo(): { readonly to?: Elsewhere } {
  return now === null ? {} : { to: now };
}
