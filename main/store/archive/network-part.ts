/**
 * What an archive holds of the shop's network, where somebody has asked for just that: the keys of the shop's authority and
 * of the hub, and the paired devices with the ways by which each is told, each as its document. Whoever has it can pretend to be the shop's computer.
 */
export interface NetworkPart {
  readonly keys: object;
  readonly devices: object;
  readonly ways: object;
}

/** The network, to whoever puts an archive in place. */
export interface ReplacedNetwork {
  /** Reads what an archive holds of it; throws where that is not as this program writes it. */
  readonly read: (part: unknown) => NetworkPart;
  /** Does this while the network is shut; then opens it by what lies in the folder. */
  readonly replacing: <T>(work: () => Promise<T>) => Promise<T>;
}
