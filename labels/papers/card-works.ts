import type { Units } from '#core/length/units.ts';
import type { PlanDoor, PlanStage } from '#core/plan/plan.ts';
import { kindOf } from '#core/stages/stage-id.ts';
import { type StationId, STATIONS } from '#core/stages/stations.ts';
import { stageName } from '#core/telling/names.ts';
import { hasWords, say } from '#core/words/say.ts';
import { type AlikeStage, alikeStages } from './alike-stages.ts';
import { type CardCaution, cautionsFor, gravestOf } from './card-cautions.ts';
import { type CardLine, settingLines } from './card-settings.ts';
import { inCommon } from './in-common.ts';

/** One set-up of a work: which of its stages or parts it is for, what is set for it alone, and how that goes. */
export interface CardMember {
  /** Its stage, where those of the work have titles of their own. */
  readonly title: string;
  readonly parts: string;
  readonly lines: readonly CardLine[];
  readonly how: readonly string[];
}

/** All stages of a kind at a station: what all its set-ups have in common once, then each of them. */
export interface CardWork {
  readonly title: string;
  /** Its parts, where all of its set-ups are for the same. */
  readonly parts: string;
  readonly lines: readonly CardLine[];
  readonly members: readonly CardMember[];
  /** Steps of the work, none that stands above on the card. */
  readonly how: readonly string[];
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
  const gravest = gravestOf(stages);
  const steps = untold<string>((line) => line);
  const cautions = untold<CardCaution>(({ text }) => text);
  return STATIONS.flatMap((station) => {
    const works = kindsAt(station, found).map((alike): CardWork => {
      const work = workOf(alike, stages, units);
      return {
        ...work,
        how: steps(work.how),
        members: work.members.map((member) => ({ ...member, how: steps(member.how) })),
        cautions: cautions(alike.flatMap(({ stage }) => cautionsFor(stage, gravest))),
      };
    });
    return works.length === 0 ? [] : [{ station, works }];
  });
}

/** What was not told before. */
function untold<T>(textOf: (each: T) => string): (all: readonly T[]) => T[] {
  const told = new Set<string>();
  return (all) =>
    all.filter((each) => {
      const text = textOf(each);
      if (told.has(text)) return false;
      told.add(text);
      return true;
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
  const everywhere = alike.map(({ how }) => new Set(how));
  const common = (alike[0]?.how ?? []).filter((line) => everywhere.every((how) => how.has(line)));
  const members = alike.map(({ how }, k) => ({
    title: title === null ? (titles[k] ?? '') : '',
    parts: shared === null ? (parts[k] ?? '') : '',
    lines: settings.own[k] ?? [],
    how: how.filter((line) => !common.includes(line)),
  }));
  return {
    title: title ?? familyTitle(alike[0]?.stage),
    parts: shared ?? '',
    lines: settings.common,
    members,
    how: common,
  };
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
