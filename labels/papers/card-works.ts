import type { Units } from '#core/length/units.ts';
import type { PlanDoor, PlanStage } from '#core/plan/plan.ts';
import { kindOf } from '#core/stages/stage-id.ts';
import { type StationId, STATIONS } from '#core/stages/stations.ts';
import { stageName } from '#core/telling/names.ts';
import { hasWords, say } from '#core/words/say.ts';
import { type AlikeStage, alikeStages } from './alike-stages.ts';
import { type CardCaution, cautionsFor, gravestOf } from './card-cautions.ts';
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
  const parts = alike.map(({ stage, parts: names }) => partsOf(stage, names, all));
  const [title, shared] = [same(titles), same(parts)];
  const settings = inCommon(alike.map(({ stage }) => settingLines(stage, units)));
  const members = alike.map((_, k) => ({
    title: title === null ? (titles[k] ?? '') : '',
    parts: shared === null ? (parts[k] ?? '') : '',
    lines: settings.own[k] ?? [],
  }));
  return {
    title: title ?? familyTitle(alike[0]?.stage),
    parts: shared ?? '',
    lines: settings.common,
    groups: grouped(members),
    how: joinSteps(
      alike.map(({ how, parts: names }) => ({
        how,
        // Where set-ups have titles of their own their steps name what they are for.
        parts: shared === null && title !== null ? names.join(', ') : '',
      })),
    ),
  };
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

/** The parts of a stage; with what must be done first where the card prints that further down, at a station that comes later. */
function partsOf({ station, after }: PlanStage, parts: readonly string[], all: readonly PlanStage[]): string {
  const below = (name: string) =>
    all.some((each) => each.stage === name && STATIONS.indexOf(each.station) > STATIONS.indexOf(station));
  const first = after.filter(below).map((name) => stageName(name));
  const names = parts.join(', ');
  return first.length === 0 ? names : say('paper.first', { parts: names, first: first.join(', ') });
}
