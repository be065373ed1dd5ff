import { placeOf, stageOf } from '#core/plan/stage-of.ts';
import { expect, test } from 'vitest';
import type { Area, Dimension } from '#core/drawing/model.ts';
import { drawn } from '#core/views/drawn.ts';
import { setupView } from '#core/views/setup-view.ts';
import { planFile } from '#core/planning/plan-file.ts';
import worked from '../../fixtures/worked-example.json' with { type: 'json' };

const plan = planFile(worked);
if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
const stiles = plan.value.doors[0]?.parts.filter(({ part }) => part.startsWith('stile')) ?? [];

for (const stile of stiles)
  for (const place of ['bottom', 'top'] as const)
    test(`the rip of the ${stile.part}’s ${place} is drawn where it stops, blade, line, mark and stop in their places`, () => {
      const stage = stageOf(stile, 'strip');
      if (stage === undefined) throw new Error('a beaded stile is ripped');
      const { shapes } = setupView(stile, stage, 'in', place);
      const areas = (role: string) =>
        shapes.filter((each): each is Area => each.kind === 'area' && each.role === role);
      const sized = (name: string) =>
        shapes.find((each): each is Dimension => each.kind === 'dimension' && each.name === name);
      const line = drawn(placeOf(stage, place)?.settings.run ?? '');
      // The line on the fence, the blade's front at table level: where the run is set, 1/64 short of the line, from the end at the stop.
      const run = line - 1 / 64;
      const onFence = areas('fence-line');
      expect(onFence).toHaveLength(2);
      for (const { path } of onFence) expect([path.start.x, path.runs[0]?.to.x]).toEqual([run, run]);
      // The mark on the stile has not come so far: it and the line that is pared to are ghosts, beyond the cut.
      const ghosts = [...areas('mark'), ...areas('finished-line')];
      expect(ghosts).toHaveLength(3);
      for (const { path, pen } of ghosts) {
        expect(pen).toBe('ghost');
        expect(path.runs.at(-1)?.to.x).toBeGreaterThanOrEqual(line);
      }
      // The fence stands 1/64 farther off than the bead's line, which leaves so much for the chisel.
      const sawn = drawn(stile.width) - drawn(stage.settings.fence) - 1 / 64;
      expect([sized('fence')?.value, sized('fence')?.to.y]).toEqual(['2 1/64', expect.closeTo(sawn, 9)]);
      expect(areas('finished-line')[0]?.path.start.y).toBeGreaterThan(sawn);
      for (const { path } of areas('stop'))
        expect(Math.max(path.start.x, ...path.runs.map(({ to }) => to.x))).toBe(0);
      expect([sized('run')?.from.x, sized('run')?.to.x, drawn(sized('run')?.value ?? '')]).toEqual([
        0,
        run,
        run,
      ]);
      expect(sized('reach')?.to.x).toBe(run);
      // The 10 in blade: its rim is 5 in from its arbor, at the table where it shows and at the upper face so far behind.
      const [blade] = areas('blade');
      const arc = blade?.path.runs.find((each) => each.kind === 'arc');
      if (blade === undefined || arc?.kind !== 'arc') throw new Error('no blade');
      const table = blade.path.start.y;
      expect(blade.path.start.x).toBe(run);
      const top = table + drawn(stile.thickness);
      const behind = run - drawn(stage.settings.lag ?? '');
      for (const point of [blade.path.start, { x: behind, y: top }, arc.to])
        expect(Math.hypot(point.x - arc.centre.x, point.y - arc.centre.y)).toBeCloseTo(5, 5);
      expect(arc.centre.x).toBeCloseTo(run - drawn(stage.settings.reach ?? ''), 9);
      const rise = sized('bladeHeight');
      expect((rise?.to.y ?? 0) - table).toBeCloseTo(arc.centre.y + 5 - table, 5);
      // Which face is up: front where the bead gets the shorter cut.
      const front = (stile.part === 'stile-left') === (place === 'bottom');
      expect(
        shapes.flatMap((each) => (each.kind === 'label' && each.role === 'face' ? [each.text] : [])),
      ).toEqual([front ? 'front up' : 'back up']);
    });
