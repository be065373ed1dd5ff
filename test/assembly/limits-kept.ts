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

/** How much room each limit has, by its name and where it holds; under zero it is broken. */
export type Margins = Map<string, number>;

/** A rail where it lies along the stiles: its two edges from their bottom end, the horn still on. */
interface Lying {
  readonly part: string;
  readonly at: string;
  readonly low: number;
  readonly high: number;
}

/**
 * Puts a door together as its settings cut it, line by line, and says how much room each limit has. Positions along a
 * stile run from its bottom end, depths from its sight edge.
 */
export function marginsOf(settings: Settings, door: Ordered, practice: Practice): Margins {
  const margins: Margins = new Map();
  const at = (key: string): number => settings.get(key) ?? Number.NaN;
  const hold = (name: string, where: string, room: number): void => {
    if (!Number.isNaN(room)) margins.set(`${name} ${where}`, room);
  };
  const meet = (name: string, where: string, one: number, other: number): void =>
    hold(name, where, -Math.abs(one - other));
  const grooveOf = (part: string): number => settings.get(`${part}/groove/depth`) ?? at(`${part}/slot/depth`);
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
    const [outer, inner] = [
      place === 'bottom' || place === 'top',
      Math.max(at(`${part}/tenon/innerHeight`), grooveOf(part)),
    ];
    const outerHeight = at(`${part}/tenon/outerHeight`);
    const tenonLow = low + (place === 'bottom' ? outerHeight : inner);
    const tenonHigh = high - (place === 'top' ? outerHeight : inner);
    const stop = at(`${part}/shoulder/stop`);
    for (const stile of ['stile-left', 'stile-right']) {
      const where = `${stile} ${place}`;
      const mortise = `${stile}/mortise@${place}`;
      const [start, end] = [at(`${mortise}/start`), at(`${mortise}/stop`)];
      const [from, to] = place === 'top' ? [length - end, length - start] : [start, end];
      hold('bound.mortise-end', `${where} low`, tenonLow - from);
      hold('bound.mortise-end', `${where} high`, to - tenonHigh);
      if (place === 'bottom') hold('bound.mortise-cover', where, from - horn - trimEnd - practice.eighth);
      else hold('bound.mortise-shows', `${where} low`, from - low - b);
      if (place === 'top') hold('bound.mortise-cover', where, length - horn - trimEnd - practice.eighth - to);
      else hold('bound.mortise-shows', `${where} high`, high - b - to);
      hold('bound.mortise-floor', where, at(`${stile}/mortise/depthFromEdge`) - b - stop);
      if (outer) {
        const haunch = at(`${part}/haunch/length`);
        hold('bound.haunch', where, Math.max(0, grooveOf(stile) - b) - haunch);
        hold('bound.haunch-gone', where, haunch);
        meet('bound.shoulder', `${where} strip`, at(`${stile}/strip@${place}/run`), horn + (high - low) - b);
      }
      meet('bound.shoulder', `${where} from`, at(`${stile}/notch-${place}/from`), outer ? 0 : low + b);
      const far = place === 'top' ? length - low - b : high - b;
      meet('bound.shoulder', `${where} to`, at(`${stile}/notch-${place}/to`), far);
      const mitre = (name: string) => at(`${stile}/mitre-${name}/sightEdge`);
      if (place === 'bottom') meet('bound.mitre', where, mitre('bottom'), high);
      if (place === 'top') meet('bound.mitre', where, mitre('top'), length - low);
      meet('bound.mitre', `${where} lower`, mitre(`${place}-lower`), length - low);
      meet('bound.mitre', `${where} upper`, mitre(`${place}-upper`), high);
    }
    meet('bound.shoulder', part, at(`${part}/mill/length`) - 2 * stop, sight + 2 * b);
    meet('bound.mitre', part, at(`${part}/mitre/sightEdge`) - stop, b);
    for (const stage of ['shoulder', 'cheek']) {
      const room = door.groove - (door.thickness - 2 * at(`${part}/${stage}/height`));
      hold('bound.tenon-tight', `${part} ${stage}`, room);
      hold('bound.tenon-loose', `${part} ${stage}`, 2 * practice.hair - room);
    }
    const depth = grooveOf(part);
    const width = high - low;
    const innerOrdered = b + door.inner;
    hold('bound.tenon-width', `${part} outer`, door.outer + practice.thirtySecond - outerHeight);
    hold(
      'bound.tenon-width',
      `${part} inner`,
      innerOrdered + practice.thirtySecond - at(`${part}/tenon/innerHeight`),
    );
    // The saw leaves a tenon that fits by itself, whatever the groove has taken of its inner edge.
    hold('bound.mortise-end', `${part} sawn`, at(`${part}/tenon/innerHeight`) - innerOrdered + door.play);
    hold('bound.deep-enough', part, door.depth + practice.sixteenth - depth);
    if (outer) {
      const narrowest = place === 'top' ? door.crown : width;
      hold('bound.behind-groove', part, narrowest - depth - trimEnd - practice.threeEighths);
      hold('bound.tenon-chisel', part, width - door.outer - Math.max(innerOrdered, depth) - door.chisel);
    } else {
      hold('bound.mid-groove', part, width - 2 * depth - practice.threeEighths);
      hold('bound.tenon-chisel', part, width - 2 * Math.max(innerOrdered, depth) - door.chisel);
    }
  }

  for (const stile of ['stile-left', 'stile-right']) {
    const depth = grooveOf(stile);
    const mortise = at(`${stile}/mortise/depthFromEdge`);
    hold('bound.behind-mortise', stile, door.stile - mortise - trimSide - practice.eighth);
    hold('bound.behind-groove', stile, door.stile - depth - trimSide - practice.threeEighths);
    hold('bound.mortise-groove', stile, b + at('rail-bottom/shoulder/stop') - depth);
    hold('bound.deep-enough', stile, door.depth + practice.sixteenth - depth);
    meet('bound.land', stile, at(`${stile}/strip/fence`), door.stile - b);
  }

  const alone = rails.length === 2;
  for (const [k, below] of rails.slice(0, -1).entries()) {
    const above = rails[k + 1];
    if (above === undefined) continue;
    const panel = alone ? 'panel' : `panel-${k + 1}`;
    const rise = above.at === 'top' ? door.rise : 0;
    const sides = [
      ['width', at(`${panel}/mill/width`) - sight, 'stile-left', 'stile-right'],
      ['length', at(`${panel}/mill/length`) - rise - (above.low - below.high), below.part, above.part],
    ] as const;
    for (const [name, both, one, other] of sides) {
      // It lies in the middle, held alike at both; or against the floor of one groove, held by what is left at the other.
      hold('bound.panel-hold', `${panel} ${name}`, both / 2 - practice.eighth);
      for (const member of [one, other]) {
        hold('bound.panel-floor', `${panel} ${member}`, grooveOf(member) - both / 2);
        hold('bound.panel-pushed', `${panel} ${member}`, both - grooveOf(member));
      }
    }
    const tongue = at(`${panel}/raise/tongue`);
    hold('bound.tongue-tight', panel, door.groove - tongue);
    hold('bound.tongue-thin', panel, tongue - (door.groove - door.fit - door.groove / 4));
  }
  return margins;
}

/** The limits that are broken, or more so than they were: what is beyond its limit as ordered may stay as it is. */
export function broken(margins: Margins, before: Margins): string[] {
  return [...margins].flatMap(([name, room]) => (room < Math.min(0, before.get(name) ?? 0) ? [name] : []));
}
