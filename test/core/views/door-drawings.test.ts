import { stageOf } from '#core/plan/stage-of.ts';
import { expect, test } from 'vitest';
import { doorSetup } from '#core/views/door-setup.ts';
import { doorView } from '#core/views/door-view.ts';
import { drawn } from '#core/views/drawn.ts';
import { surveyView } from '#core/views/survey-view.ts';
import { trimView } from '#core/views/trim-view.ts';
import { plans } from './drawn-plans.ts';

test('a door is drawn with its sizes as built, which its stiles and rails add up to, and for trimming with those and the amounts alone', () => {
  for (const { doors, units } of plans)
    for (const door of doors) {
      const shapes = doorView(door, units).shapes;
      const sized = (name: string) =>
        shapes.flatMap((shape) => (shape.kind === 'dimension' && shape.name === name ? [shape] : []));
      const [wide, high] = [sized('builtWidth')[0], sized('builtHeight')[0]];
      const across = ['stile-left', 'stile-right'].map((name) =>
        drawn(door.parts.find(({ part }) => part === name)?.width ?? ''),
      );
      expect(drawn(wide?.value ?? ''), door.door).toBeCloseTo(
        across.reduce((all, each) => all + each, drawn(door.values.sightWidth)),
        9,
      );
      const up = ['bottomRail', 'sightHeight', 'midRail', 'topRail'].flatMap(sized);
      expect(drawn(high?.value ?? ''), door.door).toBeCloseTo(
        up.reduce((all, { value }) => all + drawn(value), 0),
        9,
      );
      // To trim it only what it is as built and what comes off: no size that it has afterwards beside them.
      const trim = trimView(door, units).shapes;
      expect(
        trim.flatMap((shape) =>
          shape.kind === 'dimension' ? [[shape.name, shape.value, shape.keepName]] : [],
        ),
      ).toEqual([
        ['builtWidth', wide?.value, true],
        ['builtHeight', high?.value, true],
      ]);
    }
});

test('glued up, both diagonals run from corner to corner without the horns, and are said to', () => {
  const door = plans[0]?.doors[0];
  const glue = door === undefined ? undefined : stageOf(door, 'glue');
  if (door === undefined || glue === undefined) throw new Error('the demo’s doors are glued');
  const { shapes } = doorSetup(door, glue, 'in');
  const diagonals = shapes.flatMap((each) =>
    each.kind === 'dimension' && each.name === 'diagonal' ? [each] : [],
  );
  const size = ['builtWidth', 'builtHeight'].map((name) => {
    const found = shapes.find((each) => each.kind === 'dimension' && each.name === name);
    return drawn(found?.kind === 'dimension' ? found.value : '');
  });
  expect(diagonals.map(({ from, to }) => [Math.abs(to.x - from.x), to.y - from.y])).toEqual([size, size]);
  expect(diagonals.map(({ value }) => value)).toEqual([glue.settings.diagonal, glue.settings.diagonal]);
  expect(shapes.some((each) => each.kind === 'label' && /horns not counted/.test(each.text))).toBe(true);
});

test.each(['left', 'right'] as const)(
  'a door hung on the %s is drawn from the front with its hinges at that edge, wherever it is drawn',
  (hinge) => {
    const door = plans[1]?.doors.find(({ mark }) => mark === 'CROOKED');
    if (door === undefined) throw new Error('no door');
    const width = 15.875 + 0.625;
    for (const drawing of [
      doorView(door, 'in', 'built', hinge),
      surveyView(door, 'in', hinge),
      trimView(door, 'in', { hinge }),
    ]) {
      const xs = (drawing?.shapes ?? []).flatMap((each) =>
        each.kind === 'area' && each.role === 'hinge'
          ? [[each.path.start, ...each.path.runs.map(({ to }) => to)].map(({ x }) => x)]
          : [],
      );
      expect(xs).toHaveLength(2);
      for (const x of xs)
        if (hinge === 'left') expect(Math.min(...x)).toBeLessThan(0);
        else expect(Math.max(...x)).toBeGreaterThan(width);
      const said = drawing?.shapes.flatMap((each) => (each.kind === 'label' ? [each.text] : []));
      expect(said).toContain(`seen from the front, hinges at the ${hinge}`);
    }
  },
);
