/** A word that a setting is, of those that it may be. */
type Words = readonly [string, ...string[]];

/** What stays off its line for the chisel or the sandpaper: a mitre nearer the end, the fence farther off, the stop early, an arch inside, a panel's head outside. */
export type PareKind = 'mitre' | 'fence' | 'stop' | 'arch' | 'cutout';

/** What is known of a setting whatever the door: what it is, and what it is for. */
export interface SettingFacts {
  /** An exact length; a figure that has left the fractions; a count; an angle in degrees; or one of these words. */
  readonly is: 'length' | 'real' | 'count' | 'angle' | Words;
  /** Not every such stage has it. One that comes new to a stage is: older plans lack it. */
  readonly maybe?: true;
  /** Never set on the machine: it follows from what is set, and the work is checked by it. */
  readonly follows?: true;
  /** Set beside its line, so that something is left to pare or to sand. */
  readonly pared?: PareKind;
  /** Measured on a member of the frame: a new value says how it came out, not how it should have been cut. */
  readonly measured?: true;
  /** How the piece lies that is in hand, not what stands set: it parts no group of work. */
  readonly ofPiece?: true;
  /** The fit of the work hangs on this number more than on any other of its stage; and how exact it must be, whatever the door. */
  readonly gates?: 'line' | 'push';
  /** Only cut to, so that a test piece proves nothing of it. */
  readonly unproved?: true;
  /** To which side it is brought where it is no multiple of what a machine is set to: the side on which it has room. To the nearest where this is not given. */
  readonly rounds?: 'down' | 'up';
  /** Never brought to anything coarser than 1/64 in or 0.1 mm. */
  readonly fine?: true;
  /** The size that a tool itself has: never rounded. */
  readonly tool?: true;
}

/** Settings by name, in the order in which they are printed. */
export type SettingTable = Readonly<Record<string, SettingFacts>>;

/** How one is printed: lengths and figures as text, counts and angles as numbers, words as they are. */
type Printed<F extends SettingFacts> = F['is'] extends 'length' | 'real'
  ? string
  : F['is'] extends 'count' | 'angle'
    ? number
    : F['is'] extends Words
      ? F['is'][number]
      : never;

type Flat<T> = { [K in keyof T]: T[K] };

/** The settings of a table as the plan prints them. */
export type PrintedSettings<T extends SettingTable> = Flat<
  { readonly [K in keyof T as T[K] extends { readonly maybe: true } ? never : K]: Printed<T[K]> } & {
    readonly [K in keyof T as T[K] extends { readonly maybe: true } ? K : never]?: Printed<T[K]>;
  }
>;

/** An exact length that is set. */
export const LENGTH = { is: 'length' } as const;
/** An exact length that follows from others. */
export const FOLLOWING_LENGTH = { is: 'length', follows: true } as const;
/** One that is brought down to what a machine is set to. */
export const LENGTH_DOWN = { is: 'length', rounds: 'down' } as const;
/** The same where only some such stages have it. */
export const MAYBE_LENGTH_DOWN = { is: 'length', maybe: true, rounds: 'down' } as const;
/** One that is brought up to it. */
export const LENGTH_UP = { is: 'length', rounds: 'up' } as const;
/** A fence or a height: brought down, never to anything coarser than 1/64 in or 0.1 mm. */
export const FINE_DOWN = { is: 'length', rounds: 'down', fine: true } as const;
/** How thick a piece is pared by hand where the machine, set to its step, leaves it thicker than it may be: only in settable numbers. */
export const PARE_TO = { is: 'length', maybe: true, follows: true, fine: true, rounds: 'down' } as const;
/** The size of a tool that the shop may lack. */
export const MAYBE_TOOL = { is: 'length', maybe: true, tool: true } as const;
/** A figure beyond the fractions that follows from others. */
export const FOLLOWING_REAL = { is: 'real', follows: true } as const;
