import type { PlanDoor } from '#core/plan/plan.ts';

/** So many to the unit: every sixty-fourth, every tenth, and every inch in millimetres comes out even. Shares no code with core. */
const TO_THE_UNIT = 5 * 2 ** 14;

/** A length of a job file or a plan, "14 3/4", as a whole number; not a number where it does not come out even. */
export function whole(text: string | number | undefined): number {
  const read = /^(?:(\d+)|(?:(\d+) )?(\d+)\/(\d+))$/.exec(String(text));
  if (read === null) return Number.NaN;
  const [, alone, units = '0', n = '0', d = '1'] = read;
  const value = alone === undefined ? Number(units) + Number(n) / Number(d) : Number(alone);
  const scaled = Math.round(value * TO_THE_UNIT);
  return Math.abs(scaled - value * TO_THE_UNIT) < 1e-3 ? scaled : Number.NaN;
}

/** Exact lengths by where they are set: "stile-left/mortise@top/start", "rail-top/cheek/height". */
export type Settings = Map<string, number>;

/** Every exact length that is set on the parts of a door. */
export function settingsOf(door: PlanDoor): Settings {
  const settings: Settings = new Map();
  const take = (at: string, all: Readonly<Record<string, string | number>>): void => {
    for (const [name, value] of Object.entries(all))
      if (!Number.isNaN(whole(value))) settings.set(`${at}/${name}`, whole(value));
  };
  for (const { part, stages } of door.parts)
    for (const { stage, settings: all, places = [] } of stages) {
      take(`${part}/${stage}`, all);
      for (const place of places) take(`${part}/${stage}@${place.at}`, place.settings);
    }
  return settings;
}

/** What was ordered of a door, and what the shop has, as whole numbers. */
export interface Ordered {
  readonly width: number;
  readonly height: number;
  readonly trimSide: number;
  readonly trimEnd: number;
  readonly thickness: number;
  readonly stile: number;
  readonly bottom: number;
  readonly crown: number;
  readonly rise: number;
  readonly mids: readonly { readonly width: number; readonly centre: number }[];
  readonly bead: number;
  readonly groove: number;
  readonly depth: number;
  readonly outer: number;
  readonly inner: number;
  readonly play: number;
  readonly horn: number;
  readonly chisel: number;
  readonly fit: number;
}

/** Limits that are common practice: 1/256, 1/32, 1/16, 1/8 and 3/8 in, or what a job in millimetres reads for them. */
export interface Practice {
  readonly hair: number;
  readonly thirtySecond: number;
  readonly sixteenth: number;
  readonly eighth: number;
  readonly threeEighths: number;
}

/** What a setting is, by where it is set; not a number where there is none. */
type At = (key: string) => number;

/** A limit, by its name and where it holds, and how much room it has by what is set; under zero it is broken. */
interface Limit {
  readonly name: string;
  readonly room: (at: At) => number;
}

/** A rail where it lies along the stiles: its two edges from their bottom end, the horn still on. */
interface Lying {
  readonly part: string;
  readonly at: string;
  readonly low: number;
  readonly high: number;
}

/** The limits of a door by what is set on it, and which of them hang on which setting. */
export interface Limits {
  /** The limits that one setting breaks when it alone is off by so much, or breaks more than they were: what is beyond its limit as ordered may stay as it is. */
  readonly brokenBy: (key: string, off: number) => string[];
}

/** The limits of a door: each reckoned once, to see what it hangs on; then those alone that hang on what is off. */
export function limitsOf(settings: Settings, door: Ordered, practice: Practice): Limits {
  const hangOn = new Map<string, { readonly limit: Limit; readonly before: number }[]>();
  for (const limit of limits(settings, door, practice)) {
    const read = new Set<string>();
    const before = limit.room((key) => {
      read.add(key);
      return settings.get(key) ?? Number.NaN;
    });
    if (Number.isNaN(before)) continue;
    for (const key of read) {
      const others = hangOn.get(key);
      if (others === undefined) hangOn.set(key, [{ limit, before }]);
      else others.push({ limit, before });
    }
  }
  return {
    brokenBy: (key, off) => {
      const at: At = (each) => (settings.get(each) ?? Number.NaN) + (each === key ? off : 0);
      return (hangOn.get(key) ?? []).flatMap(({ limit: { name, room }, before }) =>
        room(at) < Math.min(0, before) ? [name] : [],
      );
    },
  };
}

/**
 * Puts a door together as its settings cut it, line by line, and says how much room each limit has. Positions along a
 * stile run from its bottom end, depths from its sight edge.
 */
function limits(settings: Settings, door: Ordered, practice: Practice): Limit[] {
  const found: Limit[] = [];
  const hold = (name: string, where: string, room: Limit['room']): void => {
    found.push({ name: `${name} ${where}`, room });
  };
  const meet = (name: string, where: string, one: Limit['room'], other: number): void =>
    hold(name, where, (at) => -Math.abs(one(at) - other));
  const grooveAt = (part: string): string =>
    settings.has(`${part}/groove/depth`) ? `${part}/groove/depth` : `${part}/slot/depth`;
  const { bead: b, horn, trimEnd, trimSide } = door;
  const sight = door.width - 2 * door.stile;
  const ends = door.crown + door.rise;
  const length = door.height + 2 * horn;
  const rails: Lying[] = [
    { part: 'rail-bottom', at: 'bottom', low: horn, high: horn + door.bottom },
    ...door.mids.map(({ width, centre }, k) => ({
      part: `rail-mid-${k + 1}`,
      at: `mid-${k + 1}`,
      low: horn + centre - width / 2,
      high: horn + centre + width / 2,
    })),
    { part: 'rail-top', at: 'top', low: horn + door.height - ends, high: horn + door.height },
  ];

  for (const { part, at: place, low, high } of rails) {
    const outer = place === 'bottom' || place === 'top';
    const depthAt = grooveAt(part);
    const inner = (at: At) => Math.max(at(`${part}/tenon/innerHeight`), at(depthAt));
    const outerHeight = (at: At) => at(`${part}/tenon/outerHeight`);
    const tenonLow = (at: At) => low + (place === 'bottom' ? outerHeight(at) : inner(at));
    const tenonHigh = (at: At) => high - (place === 'top' ? outerHeight(at) : inner(at));
    const stop = (at: At) => at(`${part}/shoulder/stop`);
    for (const stile of ['stile-left', 'stile-right']) {
      const where = `${stile} ${place}`;
      const mortise = `${stile}/mortise@${place}`;
      const from = (at: At) => (place === 'top' ? length - at(`${mortise}/stop`) : at(`${mortise}/start`));
      const to = (at: At) => (place === 'top' ? length - at(`${mortise}/start`) : at(`${mortise}/stop`));
      hold('bound.mortise-end', `${where} low`, (at) => tenonLow(at) - from(at));
      hold('bound.mortise-end', `${where} high`, (at) => to(at) - tenonHigh(at));
      const cover = horn + trimEnd + practice.eighth;
      if (place === 'bottom') hold('bound.mortise-cover', where, (at) => from(at) - cover);
      else hold('bound.mortise-shows', `${where} low`, (at) => from(at) - low - b);
      if (place === 'top') hold('bound.mortise-cover', where, (at) => length - cover - to(at));
      else hold('bound.mortise-shows', `${where} high`, (at) => high - b - to(at));
      hold('bound.mortise-floor', where, (at) => at(`${stile}/mortise/depthFromEdge`) - b - stop(at));
      if (outer) {
        const haunch = (at: At) => at(`${part}/haunch/length`);
        const floor = grooveAt(stile);
        hold('bound.haunch', where, (at) => Math.max(0, at(floor) - b) - haunch(at));
        hold('bound.haunch-gone', where, haunch);
        const line = horn + (high - low) - b;
        meet('bound.shoulder', `${where} strip`, (at) => at(`${stile}/strip@${place}/run`), line);
      }
      const notch = `${stile}/notch-${place}`;
      meet('bound.shoulder', `${where} from`, (at) => at(`${notch}/from`), outer ? 0 : low + b);
      const far = place === 'top' ? length - low - b : high - b;
      meet('bound.shoulder', `${where} to`, (at) => at(`${notch}/to`), far);
      const mitre = (name: string) => (at: At) => at(`${stile}/mitre-${name}/sightEdge`);
      if (place === 'bottom') meet('bound.mitre', where, mitre('bottom'), high);
      if (place === 'top') meet('bound.mitre', where, mitre('top'), length - low);
      meet('bound.mitre', `${where} lower`, mitre(`${place}-lower`), length - low);
      meet('bound.mitre', `${where} upper`, mitre(`${place}-upper`), high);
    }
    meet('bound.shoulder', part, (at) => at(`${part}/mill/length`) - 2 * stop(at), sight + 2 * b);
    meet('bound.mitre', part, (at) => at(`${part}/mitre/sightEdge`) - stop(at), b);
    for (const stage of ['shoulder', 'cheek']) {
      const room = (at: At) => door.groove - (door.thickness - 2 * at(`${part}/${stage}/height`));
      hold('bound.tenon-tight', `${part} ${stage}`, room);
      hold('bound.tenon-loose', `${part} ${stage}`, (at) => 2 * practice.hair - room(at));
    }
    const width = high - low;
    const innerOrdered = b + door.inner;
    const innerHeight = (at: At) => at(`${part}/tenon/innerHeight`);
    hold('bound.tenon-width', `${part} outer`, (at) => door.outer + practice.thirtySecond - outerHeight(at));
    hold(
      'bound.tenon-width',
      `${part} inner`,
      (at) => innerOrdered + practice.thirtySecond - innerHeight(at),
    );
    // The saw leaves a tenon that fits by itself, whatever the groove has taken of its inner edge.
    hold('bound.mortise-end', `${part} sawn`, (at) => innerHeight(at) - innerOrdered + door.play);
    hold('bound.deep-enough', part, (at) => door.depth + practice.sixteenth - at(depthAt));
    const eaten = (at: At) => Math.max(innerOrdered, at(depthAt));
    if (outer) {
      const narrowest = place === 'top' ? door.crown : width;
      const behind = narrowest - trimEnd - practice.threeEighths;
      hold('bound.behind-groove', part, (at) => behind - at(depthAt));
      hold('bound.tenon-chisel', part, (at) => width - door.outer - eaten(at) - door.chisel);
    } else {
      hold('bound.mid-groove', part, (at) => width - 2 * at(depthAt) - practice.threeEighths);
      hold('bound.tenon-chisel', part, (at) => width - 2 * eaten(at) - door.chisel);
    }
  }

  for (const stile of ['stile-left', 'stile-right']) {
    const depthAt = grooveAt(stile);
    const behindMortise = door.stile - trimSide - practice.eighth;
    const behindGroove = door.stile - trimSide - practice.threeEighths;
    hold('bound.behind-mortise', stile, (at) => behindMortise - at(`${stile}/mortise/depthFromEdge`));
    hold('bound.behind-groove', stile, (at) => behindGroove - at(depthAt));
    hold('bound.mortise-groove', stile, (at) => b + at('rail-bottom/shoulder/stop') - at(depthAt));
    hold('bound.deep-enough', stile, (at) => door.depth + practice.sixteenth - at(depthAt));
    meet('bound.land', stile, (at) => at(`${stile}/strip/fence`), door.stile - b);
  }

  const alone = rails.length === 2;
  for (const [k, below] of rails.slice(0, -1).entries()) {
    const above = rails[k + 1];
    if (above === undefined) continue;
    const panel = alone ? 'panel' : `panel-${k + 1}`;
    const rise = above.at === 'top' ? door.rise : 0;
    const tall = rise + (above.low - below.high);
    const sides = [
      ['width', sight, 'stile-left', 'stile-right'],
      ['length', tall, below.part, above.part],
    ] as const;
    for (const [name, open, one, other] of sides) {
      const both = (at: At) => at(`${panel}/mill/${name}`) - open;
      // It lies in the middle, held alike at both; or against the floor of one groove, held by what is left at the other.
      hold('bound.panel-hold', `${panel} ${name}`, (at) => both(at) / 2 - practice.eighth);
      for (const member of [one, other]) {
        const floor = grooveAt(member);
        hold('bound.panel-floor', `${panel} ${member}`, (at) => at(floor) - both(at) / 2);
        hold('bound.panel-pushed', `${panel} ${member}`, (at) => both(at) - at(floor));
      }
    }
    const tongue = (at: At) => at(`${panel}/raise/tongue`);
    hold('bound.tongue-tight', panel, (at) => door.groove - tongue(at));
    hold('bound.tongue-thin', panel, (at) => tongue(at) - (door.groove - door.fit - door.groove / 4));
  }
  return found;
}
