import type { Units } from '#core/length/units.ts';
import type { PlanDoor, PlanStage } from '#core/plan/plan.ts';
import { settingFacts } from '#core/plan/set-or-follows.ts';
import { kindOf } from '#core/stages/stage-id.ts';
import { type StationId, STATIONS } from '#core/stages/stations.ts';
import { stageName } from '#core/telling/names.ts';
import { hasWords, say } from '#core/words/say.ts';
import { type AlikeStage, alikeStages } from './alike-stages.ts';
import { type CardCaution, eachOnce } from './card-cautions.ts';
import { type CardLine, settingLines } from './card-settings.ts';
import { type CardStep, joinSteps } from './card-steps.ts';
import { inCommon } from './in-common.ts';

/** One set-up of a work: which of its stages or parts it is for, and what is set for it alone. */
export interface CardMember {
  /** Its stage, where those of the work have titles of their own. */
  readonly title: string;
  readonly parts: string;
  readonly lines: readonly CardLine[];
}

/** Set-ups that have more in common than all of the work: an end that they are measured from. */
export interface CardGroup {
  readonly lines: readonly CardLine[];
  readonly members: readonly CardMember[];
}

/** All stages of a kind at a station: what all its set-ups have in common once, then each of them. */
export interface CardWork {
  readonly title: string;
  /** Its parts, where all of its set-ups are for the same. */
  readonly parts: string;
  readonly lines: readonly CardLine[];
  readonly groups: readonly CardGroup[];
  /** Does it say which way the piece lies: which end at the stop block, which face up? */
  readonly turns: boolean;
  /** Steps of the work, each once. */
  readonly how: readonly CardStep[];
  /** What can hurt at it, none that stands above on the card. */
  readonly cautions: readonly CardCaution[];
}

export interface CardStation {
  readonly station: StationId;
  readonly works: readonly CardWork[];
}

/** Every setting of a door by station and work, in the shop's order; what is set alike stands together. */
export function cardStations(door: PlanDoor, units: Units): CardStation[] {
  const found = alikeStages(door, units);
  const stages = found.map(({ stage }) => stage);
  const gravest = new Set(
    found.flatMap(({ cautions: all }) => all.filter((each) => each.gravest).map(({ text }) => text)),
  );
  const told = new Set<string>();
  return STATIONS.flatMap((station) => {
    const works = kindsAt(station, found).map((alike): CardWork => {
      const cautions = eachOnce(alike.flatMap(({ cautions: all }) => all))
        .filter(({ text }) => !told.has(text))
        .map(({ text }) => ({ text, gravest: gravest.has(text) }));
      for (const { text } of cautions) told.add(text);
      return { ...workOf(alike, stages, units), cautions };
    });
    return works.length === 0 ? [] : [{ station, works }];
  });
}

/** The stages done at a station, those of a kind together, in the plan's order. */
function kindsAt(station: StationId, found: readonly AlikeStage[]): AlikeStage[][] {
  const kinds = new Map<string, AlikeStage[]>();
  for (const each of found) {
    if (each.stage.station !== station) continue;
    const kind = kindOf(each.stage.stage) ?? each.stage.stage;
    const known = kinds.get(kind);
    if (known === undefined) kinds.set(kind, [each]);
    else known.push(each);
  }
  return [...kinds.values()];
}

function workOf(
  alike: readonly AlikeStage[],
  all: readonly PlanStage[],
  units: Units,
): Omit<CardWork, 'cautions'> {
  const titles = alike.map(({ stage }) => stageName(stage.stage));
  const named = alike.map(({ stage, parts }) => ({ names: parts.join(', '), first: firstOf(stage, all) }));
  const title = same(titles);
  const settings = inCommon(alike.map(({ stage }) => settingLines(stage, units)));
  const members = alike.map((_, k): Member => ({
    title: title === null ? (titles[k] ?? '') : '',
    names: named[k]?.names ?? '',
    first: named[k]?.first ?? '',
    lines: settings.own[k] ?? [],
  }));
  const joined = sharingNames(members);
  const parts = joined.map(partsOf);
  const shared = same(parts);
  return {
    title: title ?? familyTitle(alike[0]?.stage),
    parts: shared ?? '',
    lines: settings.common,
    groups: grouped(
      joined.map((member, k) => ({
        title: member.title,
        parts: shared === null ? (parts[k] ?? '') : '',
        lines: member.lines,
      })),
    ),
    turns: alike.some(({ stage }) => saysHowItLies(stage)),
    how: joinSteps(
      alike.map(({ how }, k) => ({
        how,
        // Where set-ups have titles of their own their steps name what they are for.
        parts: title === null ? '' : (named[k]?.names ?? ''),
      })),
    ),
  };
}

/** Has a stage, or one of its places, words set: an end, a face, a side? */
function saysHowItLies({ stage, settings, places = [] }: PlanStage): boolean {
  return [settings, ...places.map((place) => place.settings)].some((all) =>
    Object.keys(all).some((name) => Array.isArray(settingFacts(stage, name)?.is)),
  );
}

interface Member {
  readonly title: string;
  readonly names: string;
  readonly first: string;
  readonly lines: readonly CardLine[];
}

/** Set-ups for which nothing is set for themselves in one, with the names of all their parts. */
function sharingNames(members: readonly Member[]): Member[] {
  return members.reduce<Member[]>((all, member) => {
    const last = all.at(-1);
    const joins = (each: Member) => each.title === '' && each.lines.length === 0;
    return last !== undefined && joins(last) && joins(member) && last.first === member.first
      ? [...all.slice(0, -1), { ...last, names: `${last.names}, ${member.names}` }]
      : [...all, member];
  }, []);
}

/** Set-ups together that are measured from the same and have the same words set, where there are several such. */
function grouped(members: readonly CardMember[]): CardGroup[] {
  const alike = new Map<string, CardMember[]>();
  for (const member of members) {
    const key = JSON.stringify(member.lines.map(({ place, name, from }) => [place, name, from]));
    const known = alike.get(key);
    if (known === undefined) alike.set(key, [member]);
    else known.push(member);
  }
  if (alike.size === 1 || alike.size === members.length) return [{ lines: [], members }];
  return [...alike.values()].map((all) => {
    if (all.length === 1) return { lines: [], members: all };
    const { common, own } = inCommon(all.map(({ lines }) => lines));
    return { lines: common, members: all.map((member, k) => ({ ...member, lines: own[k] ?? [] })) };
  });
}

/** The one text that all are, or null. */
function same(texts: readonly string[]): string | null {
  const [first = ''] = texts;
  return texts.every((text) => text === first) ? first : null;
}

/** What stages of a kind are called together that have each a title of its own. */
function familyTitle(stage: PlanStage | undefined): string {
  const key = `paper.card-${stage === undefined ? '' : (kindOf(stage.stage) ?? '')}`;
  return hasWords(key) ? say(key) : '';
}

/** What must be done before a stage and is printed further down on the card, at a station that comes later. */
function firstOf({ station, after }: PlanStage, all: readonly PlanStage[]): string {
  const below = (name: string) =>
    all.some((each) => each.stage === name && STATIONS.indexOf(each.station) > STATIONS.indexOf(station));
  return after
    .filter(below)
    .map((name) => stageName(name))
    .join(', ');
}

function partsOf({ names, first }: Member): string {
  return first === '' ? names : say('paper.first', { parts: names, first });
}
