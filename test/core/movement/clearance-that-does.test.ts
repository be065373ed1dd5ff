import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import { SPECIES } from '#core/movement/species.ts';
import type { PrintedNote } from '#core/plan/printed-plan.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';
import type { DoorFields } from '../joint/door-fields.ts';

const WIDE = { atBuild: 8, low: 2, high: 14 };

function movementOf(fields: DoorFields, moisture = WIDE): PrintedNote[] {
  const planned = planFile({ format: 1, job: 'x', units: 'in', moisture, doors: [{ mark: 'A', ...fields }] });
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  return (speakPlan(planned.value, 'en').doors[0]?.notes ?? []).filter(({ id }) =>
    /^panel-(swells|shrinks)$/.test(id),
  );
}

const doors = fc.record({
  species: fc.constantFrom(...SPECIES),
  sawn: fc.constantFrom<'flat' | 'quarter'>('flat', 'quarter'),
  width: fc.integer({ min: 14, max: 40 }),
  thirtySeconds: fc.integer({ min: 0, max: 31 }),
  depth: fc.integer({ min: 7, max: 18 }).map((n) => `${n}/32`),
  clearance: fc.integer({ min: 0, max: 6 }).map((n) => `${n}/32`),
});

test('a panel that is made with the clearance and groove that are advised swells and shrinks within them', () => {
  let advised = 0;
  fc.assert(
    fc.property(doors, ({ species, sawn, width, thirtySeconds, depth, clearance }) => {
      const made = (groove: string, free: string): DoorFields => ({
        opening: { width: `${width} ${thirtySeconds}/32`, height: '40' },
        stile: { width: '3 1/2' },
        topRail: { width: '3' },
        bottomRail: { width: '4' },
        tenon: { length: '1 3/4' },
        groove: { depth: groove },
        panel: { species, sawn, clearance: free },
      });
      const notes = movementOf(made(depth, clearance));
      for (const { message, figures } of notes) {
        if (figures.clearance === undefined) continue;
        advised += 1;
        expect(message).toMatch(/would do$/);
        expect(movementOf(made(String(figures.depth), String(figures.clearance)))).toEqual([]);
      }
      // Two notes of one panel never advise two things.
      expect(
        new Set(notes.map(({ figures }) => `${String(figures.clearance)} ${String(figures.depth)}`)).size,
      ).toBeLessThan(2);
    }),
    { numRuns: 200, seed: 6 },
  );
  expect(advised).toBeGreaterThan(150);
});

test('the shallowest groove is advised, and none where the frame has no room for it', () => {
  // V 18 1/2 of black ash, flat-sawn: 6 percent at 0.00274 are c = 0.01644 (Wood Handbook, FPL-GTR-190, table 13-5).
  const wide: DoorFields = {
    opening: { width: '25 1/2', height: '56' },
    stile: { width: '3 1/2' },
    panel: { species: 'ash, black' },
  };
  const advised = movementOf(wide).map(({ message }) => message.slice(message.indexOf(': ') + 2));
  // d ≥ 2cV / (1 − 3c) = 0.640, so 21/32; q ≥ c(V + 2d) / 2(1 + c) = 0.160, so 3/16. It shrinks 0.320, 0.321 and 0.322 in grooves
  // of 21/32, 11/16 and 23/32, and there it may lose 0.281, 0.312 and 0.344.
  expect(advised).toEqual(Array(2).fill('a clearance of 3/16 in a groove 23/32 deep would do'));
  const [swells] = movementOf({ ...wide, tenon: { length: '1/2' }, groove: { depth: '1/4' } });
  expect(swells?.message).toContain('no groove of this frame is deep enough for it');
  expect(swells?.figures.clearance).toBeUndefined();
});
