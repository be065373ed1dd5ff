import { expect, test } from 'vitest';
import { planFile } from '#core/plan/plan-file.ts';

// Values of common practice, no source.
const planned = planFile({
  format: 1,
  job: 'Small door',
  units: 'in',
  doors: [
    {
      mark: 'A',
      opening: { width: '7 1/2', height: '11 1/8' },
      stile: { width: '1 5/8' },
      tenon: { length: '1', haunchClearance: '0' },
      bead: '3/16',
      thickness: '3/4',
      groove: { width: '1/4', depth: '1/4' },
      horn: '1/16',
      mortise: { clearance: '0', endPlay: '0' },
    },
  ],
});

test('a small door comes out as it has always been made', () => {
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  const parts = planned.value.doors[0]?.parts ?? [];
  const part = (name: string) => parts.find((each) => each.part === name);
  const settings = (name: string, stage: string) =>
    part(name)?.stages.find((each) => each.stage === stage)?.settings;
  expect(part('rail-bottom')?.length).toBe('6 5/8');
  expect(part('stile-left')?.length).toBe('11 1/4');
  expect(settings('stile-left', 'bead')?.fillet).toBe('1/16');
  // 1 below the shoulder line, which lies a bead of 3/16 below the sight edge.
  expect(settings('stile-left', 'mortise')?.depthFromEdge).toBe('1 3/16');
  expect(settings('rail-bottom', 'haunch')?.length).toBe('1/16');
  // Sight width 4 1/4; the panel overlaps 3/16 on each side, which leaves 1/16 of the groove clear.
  expect(planned.value.doors[0]?.values.sightWidth).toBe('4 1/4');
  expect(part('panel')?.width).toBe('4 5/8');
});
