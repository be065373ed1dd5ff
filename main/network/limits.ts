/** What a machine may do that has not shown that it is paired, before anything is asked of it or answered. */
export interface StrangersLimits {
  /** Connections at once, over all machines and of one; and of a device, which is none. */
  readonly connections: { readonly most: number; readonly ofOne: number; readonly ofDevice: number };
  /** How long one may last, in ms: a browser makes another without a word. */
  readonly lastMs: number;
  /** Bytes that may come in by one. */
  readonly bytes: number;
  /** How quickly connections are made: over all, and of one. What comes quicker waits. */
  readonly made: { readonly all: Rate; readonly ofOne: Rate };
  /** How quickly one may ask; who asks quicker is shut out for a while. And all together, but for what one that asks little asks. */
  readonly asked: { readonly all: Rate; readonly ofOne: Rate; readonly little: number };
  readonly shutOutMs: number;
}

export interface Rate {
  readonly most: number;
  readonly perSecond: number;
}

/** On the screens' port: a page to be paired by is some twenty requests. A device is no stranger from its first request on. */
export const STRANGERS: StrangersLimits = {
  connections: { most: 96, ofOne: 24, ofDevice: 32 },
  lastMs: 60_000,
  bytes: 256 * 1024,
  made: { all: { most: 300, perSecond: 100 }, ofOne: { most: 300, perSecond: 20 } },
  asked: { all: { most: 600, perSecond: 100 }, ofOne: { most: 150, perSecond: 5 }, little: 20 },
  shutOutMs: 10_000,
};

/** On the port of the page with the certificate, where everybody is one, and each answer ends its connection. */
export const READERS: StrangersLimits = {
  ...STRANGERS,
  lastMs: 15_000,
  bytes: 16 * 1024,
  made: { all: { most: 60, perSecond: 50 }, ofOne: { most: 30, perSecond: 10 } },
};

/** How long a connection may stand still, in ms; a stream beats each second. */
export const IDLE_MS = 120_000;

/** What the server by HTTP/2 is made with. */
export const OVER_TLS = {
  allowHTTP1: true,
  handshakeTimeout: 10_000,
  // Quick ones, which every browser has: a hostile machine chooses the slowest.
  ecdhCurve: 'X25519:P-256',
  minVersion: 'TLSv1.2',
  maxSessionMemory: 32,
  /** What a browser asks at once: the hub would take as many as the other side likes. */
  settings: { maxConcurrentStreams: 128 },
} as const;

/** Requests of the trust page by HTTP/1.1, in ms. */
export const TRUST_REQUEST_MS = 10_000;
