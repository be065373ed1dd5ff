import type { PlanDoor, PlanPart } from '#core/plan/plan.ts';
import { compared, minus, multiplied, plus, printed, ratio, type Ratio } from '../core/exact.ts';
import { looseStage } from '../loose-plan.ts';
import { find, partOf } from './machined-faces.ts';

// A door put together at the bench from the numbers as they are shown, with the stock as it is. All by its own
// arithmetic: no number here comes from core but those of the plan.

const NOTHING: Ratio = { n: 0n, d: 1n };

/** What is shown is a multiple of `usual`, a fence or a height of `fine`. */
export interface ByHand {
  readonly usual: Ratio;
  readonly fine: Ratio;
  /** As ordered: no setting says what a haunch is short of the groove's floor by. */
  readonly haunchClearance: string;
}

/** What kinds of door were put together. */
export interface HandTally {
  made: number;
  arched: number;
  midRails: number;
  plain: number;
  /** Doors whose stock or groove came out otherwise than the plan's steps. */
  offStep: number;
  haunches: number;
  /** Haunches that come out thicker than their groove is wide, and are told to be pared. */
  pared: number;
  raised: number;
}

export const noHands = (): HandTally => ({
  made: 0,
  arched: 0,
  midRails: 0,
  plain: 0,
  offStep: 0,
  haunches: 0,
  pared: 0,
  raised: 0,
});

const num = (part: PlanPart | PlanDoor, stage: string, name: string, at?: string): Ratio => {
  const found = looseStage(part, stage);
  const settings =
    at === undefined ? found?.settings : found?.places?.find((each) => each.at === at)?.settings;
  return ratio(settings?.[name]);
};
/** The stage in which a member's groove is plowed or slotted. */
const plowed = (part: PlanPart): 'groove' | 'slot' =>
  find(part, 'groove') === undefined ? 'slot' : 'groove';
/** Where its fence or its cutter stands: a wall from the face. */
const wallOf = (part: PlanPart): Ratio =>
  plowed(part) === 'groove' ? num(part, 'groove', 'fence') : num(part, 'slot', 'cutterHeight');
const smallest = (first: Ratio, ...others: readonly Ratio[]): Ratio =>
  others.reduce((a, b) => (compared(a, b) <= 0 ? a : b), first);
const halved = (a: Ratio): Ratio => ({ n: a.n, d: a.d * 2n });
const doubled = (a: Ratio): Ratio => multiplied(a, 2);

/** Throws, saying what does not meet, where one is more than the other. */
function notOver(what: string, one: Ratio, other: Ratio): void {
  if (compared(one, other) > 0)
    throw new Error(`${what}: ${printed(one)} is over ${printed(other)} by ${printed(minus(one, other))}`);
}
function under(what: string, one: Ratio, other: Ratio): void {
  if (compared(one, other) >= 0) throw new Error(`${what}: ${printed(one)} is not under ${printed(other)}`);
}
function alike(what: string, one: Ratio, other: Ratio): void {
  if (compared(one, other) !== 0) throw new Error(`${what}: ${printed(one)} is not ${printed(other)}`);
}

/** How a rail lies between the stiles: its sight edges, and the play at the ends of its tenon's mortise. */
interface Frame {
  readonly b: Ratio;
  readonly stop: Ratio;
  readonly shoulders: Ratio;
  readonly depth: Ratio;
}

/** Puts a door together from its numbers as they are shown; `exact` is the same door by the plan. Throws where it does not close. */
export function putTogetherByHand(shown: PlanDoor, exact: PlanDoor, how: ByHand, tally: HandTally): void {
  const stiles = ['stile-left', 'stile-right'] as const;
  const rails = shown.parts.filter(({ part }) => part.startsWith('rail'));
  const panels = shown.parts.filter(({ part }) => part.startsWith('panel'));
  const [left, ordered] = [partOf(shown, 'stile-left'), partOf(exact, 'stile-left')];
  const b = find(left, 'bead') === undefined ? NOTHING : num(ordered, 'bead', 'bead');
  const [first] = rails;
  if (first === undefined) throw new Error('no rail');
  const stop = num(first, 'shoulder', 'stop');
  const frame: Frame = {
    b,
    stop,
    shoulders: minus(ratio(first.length), doubled(stop)),
    depth: num(left, plowed(left), 'depth'),
  };
  for (const name of stiles) alongStile(partOf(shown, name), partOf(exact, name), b, how);
  for (const rail of rails) {
    shoulder(rail, frame, ratio(shown.values.shoulderToShoulder), how);
    for (const name of stiles) thickness(partOf(shown, name), rail, exact, how);
  }
  tenonsEnter(shown, exact, frame, how);
  haunches(shown, exact, frame, how, tally);
  const members = exact.parts.filter(({ part }) => !part.startsWith('panel'));
  const grooves = members.map((member) => grooveOf(partOf(shown, member.part), member));
  for (const panel of panels) {
    panelGoesIn(panel, frame, exact, how);
    tongue(panel, partOf(exact, panel.part), grooves, num(ordered, plowed(ordered), 'width'), how, tally);
  }
  heights(shown, exact, frame, how);
  head(shown, exact, frame, how, tally);
  tally.made += 1;
  if (compared(b, NOTHING) === 0) tally.plain += 1;
  if (rails.length > 2) tally.midRails += 1;
  if (compared(ratio(left.thickness), ratio(ordered.thickness)) !== 0) tally.offStep += 1;
}

/** Strips, mitres and notches of a stile stop short of their exact lines, by less than two steps, and never pass them. */
function alongStile(shown: PlanPart, exact: PlanPart, b: Ratio, { usual }: ByHand): void {
  const room = doubled(usual);
  const short = (what: string, at: Ratio, line: Ratio) => {
    notOver(`${shown.part} ${what} past its line`, at, line);
    under(`${shown.part} ${what} left over`, minus(line, at), room);
  };
  const fromTop = (part: PlanPart, at: Ratio) => minus(ratio(part.length), at);
  for (const { stage, settings } of exact.stages as readonly { stage: string; settings: object }[]) {
    if (stage.startsWith('mitre')) {
      for (const name of ['sightEdge', 'shoulderLine'])
        if (stage.endsWith('lower'))
          short(
            `${stage} ${name}`,
            fromTop(exact, num(exact, stage, name)),
            fromTop(shown, num(shown, stage, name)),
          );
        else short(`${stage} ${name}`, num(shown, stage, name), num(exact, stage, name));
      notOver(`${stage} height`, num(shown, stage, 'height'), b);
    }
    if (stage.startsWith('notch')) {
      if (num(exact, stage, 'from').n !== 0n)
        short(`${stage} from`, num(exact, stage, 'from'), num(shown, stage, 'from'));
      short(`${stage} to`, num(shown, stage, 'to'), num(exact, stage, 'to'));
      alike(
        `${stage} length`,
        num(shown, stage, 'length'),
        minus(num(shown, stage, 'to'), num(shown, stage, 'from')),
      );
      notOver(`${stage} height`, num(shown, stage, 'height'), b);
    }
    if (stage !== 'strip') continue;
    for (const at of ['bottom', 'top'])
      short(`strip at ${at}`, num(shown, stage, 'run', at), num(exact, stage, 'run', at));
    if ('fence' in settings) {
      const line = minus(ratio(shown.width), b);
      notOver(`${shown.part} strip eats the stile`, line, num(shown, stage, 'fence'));
      under(`${shown.part} strip leaves`, minus(num(shown, stage, 'fence'), line), usual);
    }
  }
}

/** Every rail is as long between its shoulders as every other; what is cut at its ends is measured from one stop. */
function shoulder(rail: PlanPart, { b, stop, shoulders }: Frame, told: Ratio, { usual }: ByHand): void {
  const { part } = rail;
  alike(`${part} shoulder stop`, num(rail, 'shoulder', 'stop'), stop);
  alike(`${part} between its shoulders`, minus(ratio(rail.length), doubled(stop)), shoulders);
  alike(`${part} as told between its shoulders`, shoulders, told);
  alike(`${part} as milled`, num(rail, 'mill', 'length'), ratio(rail.length));
  alike(`${part} inner stop`, num(rail, 'tenon', 'innerStop'), stop);
  if (find(rail, 'arch') !== undefined) {
    const gap = minus(doubled(num(rail, 'arch', 'centre')), ratio(rail.length));
    notOver(`${part} centre`, { n: gap.n < 0n ? -gap.n : gap.n, d: gap.d }, usual);
  }
  if (find(rail, 'mitre') === undefined) return;
  alike(`${part} mitre to its shoulder`, num(rail, 'mitre', 'shoulderLine'), stop);
  const sight = plus(stop, b);
  notOver(`${part} mitre past its line`, num(rail, 'mitre', 'sightEdge'), sight);
  under(`${part} mitre left over`, minus(sight, num(rail, 'mitre', 'sightEdge')), usual);
  notOver(`${part} mitre height`, num(rail, 'mitre', 'height'), b);
}

/** Where a member's groove lies in its thickness, and how wide it comes out. */
function grooveOf(shown: PlanPart, exact: PlanPart): Ratio {
  if (find(shown, 'slot') !== undefined) return num(exact, 'slot', 'width');
  return minus(ratio(exact.thickness), doubled(num(shown, 'groove', 'fence')));
}

/** Through the thickness, the stock as it is and as it would be milled to what is shown: one height, and a tenon that enters what was pared for it. */
function thickness(stile: PlanPart, rail: PlanPart, exact: PlanDoor, { fine }: ByHand): void {
  const fence = wallOf(stile);
  for (const [stage, name] of [
    ['shoulder', 'height'],
    ['cheek', 'height'],
    ['bead', 'cutterHeight'],
    ['slot', 'cutterHeight'],
    ['groove', 'fence'],
  ] as const)
    if (find(rail, stage) !== undefined)
      alike(`${rail.part} ${stage} ${name}`, num(rail, stage, name), fence);
  const pared = num(stile, 'pare', 'width');
  const chisel = looseStage(stile, 'mortise')?.settings;
  for (const stock of [partOf(exact, stile.part), stile].map((part) => ratio(part.thickness))) {
    const tenon = minus(stock, doubled(num(rail, 'cheek', 'height')));
    notOver(`${rail.part} tenon does not enter ${stile.part}: as thick as`, tenon, pared);
    // Stock that is no multiple of the finest step is milled to the nearest: half a step more room at most.
    under(`${rail.part} tenon is loose by`, minus(pared, tenon), plus(fine, halved(fine)));
    if (chisel?.chisel === undefined) continue;
    const hole = num(stile, 'mortise', 'fence');
    notOver(`${stile.part} chisel before the groove's front wall`, fence, hole);
    notOver(
      `${stile.part} chisel past the groove's back wall`,
      plus(hole, ratio(chisel.chisel)),
      plus(minus(ratio(partOf(exact, stile.part).thickness), fence), NOTHING),
    );
  }
  under(
    `${rail.part} tenon is loose by`,
    minus(pared, minus(ratio(partOf(exact, stile.part).thickness), doubled(fence))),
    fine,
  );
}

/** Where a rail's tenon lies along its stile, wherever between the line shown and the exact one its mitre is pared to: inside its mortise. */
function tenonsEnter(shown: PlanDoor, exact: PlanDoor, { b, stop }: Frame, { usual }: ByHand): void {
  const stile = partOf(shown, 'stile-left');
  const [horn, exactStile] = [num(exact, 'trim', 'horn'), partOf(exact, 'stile-left')];
  const tip = plus(b, stop);
  notOver('the tenon on the mortise’s floor', tip, num(stile, 'mortise', 'depthFromEdge'));
  notOver(
    'the tenon on the mortise’s floor, from the groove',
    tip,
    plus(num(stile, plowed(stile), 'depth'), num(stile, 'mortise', 'depthFromGroove')),
  );
  for (const rail of shown.parts.filter(({ part }) => part.startsWith('rail'))) {
    const at = rail.part.slice('rail-'.length);
    const ordered = partOf(exact, rail.part);
    const [start, end] = [num(stile, 'mortise', 'start', at), num(stile, 'mortise', 'stop', at)];
    const inner = num(rail, 'tenon', 'innerHeight');
    const wide = ratio(rail.width);
    const lies: [Ratio, Ratio][] = [];
    if (at.startsWith('mid')) {
      const centre = halved(
        plus(num(exactStile, 'mortise', 'start', at), num(exactStile, 'mortise', 'stop', at)),
      );
      lies.push([plus(minus(centre, halved(wide)), inner), minus(plus(centre, halved(wide)), inner)]);
    } else {
      const line = plus(horn, ratio(ordered.width));
      const mitred = find(stile, `mitre-${at}`) !== undefined;
      for (const sight of mitred ? [num(stile, `mitre-${at}`, 'sightEdge'), line] : [line])
        lies.push([plus(minus(sight, wide), num(rail, 'tenon', 'outerHeight')), minus(sight, inner)]);
    }
    for (const [from, to] of lies) {
      notOver(`${rail.part} tenon before its mortise's start`, start, from);
      notOver(`${rail.part} tenon past its mortise's stop`, to, end);
    }
    const play = doubled(
      minus(
        plus(horn, num(partOf(exact, 'rail-bottom'), 'tenon', 'outerHeight')),
        num(exactStile, 'mortise', 'start', 'bottom'),
      ),
    );
    const width = minus(lies[0]?.[1] ?? NOTHING, lies[0]?.[0] ?? NOTHING);
    notOver(
      `${rail.part} tenon has end play`,
      minus(minus(end, start), width),
      plus(play, multiplied(usual, 4)),
    );
  }
}

/** No haunch reaches the groove's floor where it is to be short of it. */
function haunches(
  shown: PlanDoor,
  exact: PlanDoor,
  { b, depth, stop }: Frame,
  { haunchClearance, fine }: ByHand,
  tally: HandTally,
): void {
  for (const name of ['rail-bottom', 'rail-top']) {
    const rail = partOf(shown, name);
    const long = num(rail, 'haunch', 'length');
    alike(`${name} haunch`, minus(stop, num(rail, 'tenon', 'outerStop')), long);
    alike(`${name} haunch height`, num(rail, 'haunch', 'height'), num(rail, 'tenon', 'outerHeight'));
    if (long.n === 0n) continue;
    notOver(`${name} haunch on the groove's floor`, plus(long, ratio(haunchClearance)), minus(depth, b));
    tally.haunches += 1;
    haunchEnters(rail, shown, exact, fine, tally);
  }
}

/** A haunch is as thick as its tenon: what is too thick for the narrower groove of the stiles is told to be pared to it, and nothing else. */
function haunchEnters(rail: PlanPart, shown: PlanDoor, exact: PlanDoor, fine: Ratio, tally: HandTally): void {
  const [left, right] = (['stile-left', 'stile-right'] as const).map((name) =>
    grooveOf(partOf(shown, name), partOf(exact, name)),
  ) as [Ratio, Ratio];
  const narrow = smallest(left, right);
  const thick = minus(ratio(partOf(exact, rail.part).thickness), doubled(num(rail, 'cheek', 'height')));
  const told = find(rail, 'haunch')?.pareTo;
  if (told === undefined) {
    notOver(`${rail.part} haunch does not enter its groove: as thick as`, thick, narrow);
    return;
  }
  under(`${rail.part} haunch is pared for nothing`, narrow, thick);
  notOver(`${rail.part} haunch as pared does not enter its groove`, ratio(told), narrow);
  under(`${rail.part} haunch is pared loose`, minus(narrow, ratio(told)), fine);
  tally.pared += 1;
}

/** Between the stiles: no wider than from floor to floor, and held at both edges. */
function panelGoesIn(
  panel: PlanPart,
  { b, shoulders, depth }: Frame,
  exact: PlanDoor,
  { usual }: ByHand,
): void {
  const sight = minus(shoulders, doubled(b));
  notOver(
    `${panel.part} wider than between the grooves' floors`,
    ratio(panel.width),
    plus(sight, doubled(depth)),
  );
  alike(`${panel.part} as milled`, num(panel, 'mill', 'width'), ratio(panel.width));
  const hold = minus(ratio(partOf(exact, panel.part).width), ratio(exact.values.sightWidth));
  if (compared(hold, doubled(usual)) >= 0) under(`${panel.part} falls out`, sight, ratio(panel.width));
}

/** The tongue enters every groove and slot, and no looser than its fit and a step; what is left of the panel is the tongue. */
function tongue(
  panel: PlanPart,
  exact: PlanPart,
  grooves: readonly Ratio[],
  ordered: Ratio,
  { fine }: ByHand,
  tally: HandTally,
): void {
  const [first = NOTHING, ...others] = grooves;
  const narrowest = smallest(first, ...others);
  if (find(panel, 'raise') === undefined) {
    notOver(`${panel.part} too thick`, ratio(exact.thickness), narrowest);
    return;
  }
  const thick = num(panel, 'raise', 'tongue');
  under(`${panel.part} tongue in the narrowest groove`, thick, narrowest);
  const fit = minus(ordered, num(exact, 'raise', 'tongue'));
  // A panel thinner than that is all tongue.
  if (compared(thick, ratio(panel.thickness)) < 0)
    under(`${panel.part} tongue is loose by`, minus(narrowest, thick), plus(fit, fine));
  const depth = num(panel, 'raise', 'depth');
  alike(`${panel.part} depth and tongue`, plus(depth, thick), ratio(panel.thickness));
  notOver(`${panel.part} left over its depth`, minus(ratio(exact.thickness), depth), narrowest);
  tally.raised += 1;
}

/** Where the sight edges of the rails come on the left stile, from its bottom end; the mitres pared to these lines. */
function heights(shown: PlanDoor, exact: PlanDoor, { depth }: Frame, { usual }: ByHand): void {
  const stile = partOf(shown, 'stile-left');
  const exactStile = partOf(exact, 'stile-left');
  const horn = num(exact, 'trim', 'horn');
  const mids = shown.parts.filter(({ part }) => part.startsWith('rail-mid'));
  const mitred = find(stile, 'mitre-bottom') !== undefined;
  const panels = shown.parts.filter(({ part }) => part.startsWith('panel'));
  for (const to of mitred ? (['line', 'exact'] as const) : (['exact'] as const)) {
    const line = (at: 'bottom' | 'top') =>
      to === 'line'
        ? num(stile, `mitre-${at}`, 'sightEdge')
        : plus(horn, ratio(partOf(exact, `rail-${at}`).width));
    const edges = [line('bottom')];
    for (const mid of mids) {
      const at = mid.part.slice('rail-'.length);
      const centre = halved(
        plus(num(exactStile, 'mortise', 'start', at), num(exactStile, 'mortise', 'stop', at)),
      );
      const wide = halved(ratio(mid.width));
      edges.push(minus(centre, wide), plus(centre, wide));
    }
    edges.push(minus(ratio(stile.length), line('top')));
    for (const [k, panel] of panels.entries()) {
      const sight = minus(edges[2 * k + 1] ?? NOTHING, edges[2 * k] ?? NOTHING);
      const side =
        find(panel, 'cutout') === undefined ? ratio(panel.length) : num(panel, 'cutout', 'sideHeight');
      notOver(
        `${panel.part} longer than between the grooves' floors (${to})`,
        side,
        plus(sight, doubled(depth)),
      );
      const hold = minus(ratio(partOf(exact, panel.part).width), ratio(exact.values.sightWidth));
      if (compared(hold, multiplied(usual, 5)) >= 0) under(`${panel.part} falls out (${to})`, sight, side);
    }
  }
  for (const mid of mids) {
    const at = mid.part.slice('rail-'.length);
    if (find(stile, `mitre-${at}-upper`) === undefined) continue;
    const below = minus(ratio(stile.length), num(stile, `mitre-${at}-lower`, 'sightEdge'));
    const between = minus(num(stile, `mitre-${at}-upper`, 'sightEdge'), below);
    notOver(`${mid.part} between its mitres has a gap`, between, ratio(mid.width));
  }
}

/** The panel's head about the arch's pivot: inside the groove's floor, and behind the sight edge. */
function head(shown: PlanDoor, exact: PlanDoor, { depth }: Frame, { usual }: ByHand, tally: HandTally): void {
  const top = partOf(shown, 'rail-top');
  const panel = shown.parts.filter(({ part }) => part.startsWith('panel')).at(-1);
  if (panel === undefined || find(top, 'arch') === undefined) return;
  const [smooth, radius] = [num(top, 'smooth', 'radius'), num(panel, 'cutout', 'radius')];
  notOver('the panel’s head wider than between the grooves’ floors', radius, plus(smooth, depth));
  const hold = halved(minus(ratio(partOf(exact, panel.part).width), ratio(exact.values.sightWidth)));
  if (compared(hold, usual) >= 0) under('the panel’s head falls out', smooth, radius);
  notOver('the rail is sawn inside its arch', num(top, 'arch', 'radius'), smooth);
  alike('the head’s width', num(panel, 'cutout', 'width'), ratio(panel.width));
  alike('the head’s height', num(panel, 'cutout', 'height'), ratio(panel.length));
  tally.arched += 1;
}
