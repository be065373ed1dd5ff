import { expect, test } from 'vitest';
import type { Shape } from '#core/drawing/model.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { settableDoor } from '#core/settable/settable-door.ts';
import { paperStep } from '#core/settable/step.ts';
import { howTo } from '#core/telling/how-to.ts';
import { setupView } from '#core/views/setup-view.ts';
import { speak } from '#core/words/say.ts';
import { everyStageJob } from '../../e2e/every-stage-job.ts';

/**
 * What a beginner does who follows the steps to the letter, common practice, no source: nothing is to be said there that
 * hurts, or that the drawing beside it says otherwise.
 */
const plan = planFile({ ...(everyStageJob('in') as Record<string, unknown>), ways: { groove: 'router' } });
if (!plan.ok || plan.value.doors[0] === undefined) throw new Error(JSON.stringify(plan));
const door = settableDoor(plan.value.doors[0], paperStep('in'));

function linesOf(name: string, id: string): readonly string[] {
  const part = door.parts.find((each) => each.part === name);
  const stage = part?.stages.find((each) => each.stage === id);
  if (part === undefined || stage === undefined) throw new Error(`${name} has no ${id}`);
  const place = stage.places?.[0]?.at;
  return howTo(stage, { part, ...(place === undefined ? {} : { place }), step: paperStep('in') });
}

function shapesOf(name: string, id: string): readonly Shape[] {
  const part = door.parts.find((each) => each.part === name);
  const stage = part?.stages.find((each) => each.stage === id);
  if (part === undefined || stage === undefined) throw new Error(`${name} has no ${id}`);
  return setupView(part, stage, 'in').shapes;
}

function wordsDrawn(name: string, id: string): readonly string[] {
  return shapesOf(name, id).flatMap((shape) => (shape.kind === 'label' ? [shape.text] : []));
}

test('the edges of a tenon are told in the order in which they are drawn: the outer one first', () => {
  for (const rail of ['rail-bottom', 'rail-top']) {
    const lines = linesOf(rail, 'tenon');
    const at = (start: string) => lines.findIndex((line) => line.startsWith(start));
    expect(at('Outer edge'), rail).toBeGreaterThanOrEqual(0);
    expect(at('Inner edge'), rail).toBeGreaterThan(at('Outer edge'));
    const drawn = wordsDrawn(rail, 'tenon');
    expect(drawn, rail).toContain('1. outer edge down');
    expect(drawn, rail).toContain('2. sight edge down');
  }
});

test('which cut of a notch comes first is drawn as the steps tell it: at an end the one at the line, else the near one', () => {
  for (const [id, end] of [
    ['notch-bottom', true],
    ['notch-top', true],
    ['notch-mid-1', false],
  ] as const) {
    const first = linesOf('stile-left', id).find((line) => /^First/.test(line));
    expect(first, id).toMatch(end ? /^First the cut at the line/ : /^First cut: stop block to the near side/);
    const named = shapesOf('stile-left', id).flatMap((shape) =>
      shape.kind === 'label' && /^(first|last) cut$/.test(shape.text) ? [shape] : [],
    );
    const order = named.sort((a, b) => a.at.x - b.at.x).map(({ text }) => text);
    expect(order, id).toEqual(end ? ['last cut', 'first cut'] : ['first cut', 'last cut']);
  }
});

test('a deep cut at the router table is never told as one pass', () => {
  for (const part of ['panel-1', 'panel-2'])
    expect(linesOf(part, 'raise')[0], part).toMatch(/not in one run: begin low, three or more.*the last/i);
  for (const part of ['stile-left', 'rail-bottom', 'rail-mid-1', 'rail-top'])
    expect(linesOf(part, 'slot').join(' '), part).toMatch(/not in one pass: two or three.*full depth last/i);
  expect(linesOf('rail-top', 'bead').join(' ')).toMatch(/not in one pass: begin with the cutter low/i);
  expect(linesOf('rail-top', 'bead').join(' ')).not.toMatch(/in one run/i);
});

test('at the sander one looks which way the drum turns before the rail is fed', () => {
  const lines = linesOf('rail-top', 'smooth');
  const look = lines.findIndex((line) => /which way your drum turns/.test(line));
  expect(look).toBeGreaterThanOrEqual(0);
  expect(look).toBeLessThan(lines.findIndex((line) => line.startsWith('Sand ')));
});

test('the mortiser’s fence is proved by a piece turned end for end: turned over, its other edge would be up', () => {
  const prove = linesOf('stile-left', 'mortise').find((line) => line.startsWith('Prove'));
  expect(prove).toMatch(/turn it end for end, same edge up/);
  expect(prove).not.toMatch(/turn it over/);
});

test('which edges of a panel come first when it is raised is said by their names, in each language', () => {
  expect(wordsDrawn('panel-1', 'raise')).toContain('BOTTOM and TOP first');
  speak('de');
  expect(wordsDrawn('panel-1', 'raise')).toContain('UNTEN und OBEN zuerst');
  speak('en');
});
