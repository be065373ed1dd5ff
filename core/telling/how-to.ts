import { limitsFor } from '../length/limits.ts';
import { readPart } from '../plan/part-name.ts';
import type { PlanStage, Settings } from '../plan/plan.ts';
import { widestTenon } from '../plan/wide-tenon.ts';
import { lengthOf } from '../settable/numbers.ts';
import { readStage, stageIs } from '../stages/stage-id.ts';
import type { Steps, StepsKey, StepTable } from '../stages/steps.ts';
import { factsOf } from '../stages/table.ts';
import { hasWords, say, type WordKey } from '../words/say.ts';
import { type HowTo, type StepFigure, stepFigures } from './step-figures.ts';

/**
 * The lines that say how a stage is done on this part, at this place: what is set, on what it is proved, which end and
 * face come first, how the piece is turned, what stays for the chisel. None where all of it stands on the set-up. A line
 * about what is not there is left out: a tool that the shop lacks, a haunch of nothing.
 */
export function howTo(stage: PlanStage, how: HowTo = {}): string[] {
  const read = readStage(stage.stage);
  const steps = read === null ? undefined : factsOf(read.kind).steps;
  if (steps === undefined) return [];
  const figure = stepFigures(stage, how);
  return [
    ...stepsOn(steps, stage, how.part),
    ...(steps.wide !== undefined && isTooWide(stage, how) ? steps.wide : []),
    ...('pareTo' in stage.settings ? (steps.pareTo ?? []) : []),
  ]
    .flatMap(linesOf)
    .map((line) => filled(line, figure))
    .filter((line) => line !== null);
}

/** The steps of a table that are for this stage on this part. */
function stepsOn(steps: StepTable, { stage, settings }: PlanStage, part: HowTo['part']): Steps {
  const { usual, lacking } = steps;
  if (lacking !== undefined && !(lacking.setting in settings)) return lacking.steps;
  const id = readStage(stage);
  const edge = id?.mid?.side;
  if (edge !== undefined) return steps[edge] ?? usual;
  if (id?.end !== undefined) return steps.atEnd ?? usual;
  if (part === undefined) return usual;
  const { kind, at } = readPart(part);
  const arched = part.stages.some((each) => stageIs(each.stage, 'arches'));
  switch (kind) {
    case 'stile':
      return steps.stile ?? usual;
    case 'rail':
      return (at === 'mid' ? steps.mid : arched ? steps.arched : undefined) ?? usual;
    case 'panel':
      return (arched ? steps.archedPanel : undefined) ?? steps.panel ?? usual;
  }
}

/** Is the tenon of this stage wider than one should be, by its groove? */
function isTooWide({ settings }: PlanStage, { part, step }: HowTo): boolean {
  if (step === undefined) return false;
  const grooved = part?.stages.find((each) => stageIs(each.stage, 'grooves'));
  const widthOf = (all: Settings) => lengthOf(all.width, step.units);
  const [tenon, groove] = [widthOf(settings), grooved === undefined ? null : widthOf(grooved.settings)];
  if (tenon === null || groove === null) return false;
  return tenon.compare(widestTenon(groove, limitsFor(step.units))) > 0;
}

/** The words of a line with its figures in them; null where one of them is not here. One that no stage has stays in its braces. */
function filled(line: WordKey, figure: StepFigure): string | null {
  const figures: Record<string, string> = {};
  for (const [, name = ''] of say(line).matchAll(/\{(\w+)\}/g)) {
    const told = figure(name);
    if (told === null) return null;
    if (told !== undefined) figures[name] = told;
  }
  return say(line, figures);
}

function linesOf(family: StepsKey): WordKey[] {
  const keys: WordKey[] = [];
  for (let k = 1; ; k += 1) {
    const key = `${family}.${k}`;
    if (!hasWords(key)) return keys;
    keys.push(key);
  }
}
