import demo from '#main/demo/demo-job.json' with { type: 'json' };
import mixed from '../../fixtures/mixed-job.json' with { type: 'json' };
import worked from '../../fixtures/worked-example.json' with { type: 'json' };

const MADE = 60;

/** Jobs that never change: what is printed of them tells one version of the arithmetic from another. */
export function fixedJobs(): unknown[] {
  const made = Array.from({ length: MADE }, (_, k) => madeJob(k, k % 2 === 0 ? 'in' : 'mm'));
  return [demo, mixed, worked, ...made];
}

/** A job of one door with some of its fields, by its number. */
function madeJob(seed: number, units: 'in' | 'mm'): unknown {
  const next = numbers(seed);
  const between = (least: number, most: number) => least + (next() % (most - least + 1));
  /** So many sixteenths of an inch, or as many times 1.5 mm. */
  const size = (least: number, most: number): string => {
    const n = between(least, most);
    return units === 'in'
      ? `${Math.floor(n / 16)} ${n % 16}/16`
      : `${Math.floor((n * 3) / 2)}.${n % 2 === 0 ? 0 : 5}`;
  };
  const maybe = (name: string, value: () => unknown): object => (next() % 3 === 0 ? { [name]: value() } : {});
  const fields = {
    ...maybe('thickness', () => size(12, 18)),
    ...maybe('stile', () => ({ width: size(28, 48) })),
    ...maybe('bottomRail', () => ({ width: size(36, 60) })),
    ...maybe('topRail', () => ({ width: size(32, 48) })),
    ...maybe('bead', () => (next() % 4 === 0 ? 0 : size(2, 4))),
    ...maybe('hinge', () => 'right'),
    ...maybe('groove', () => ({ depth: size(4, 6) })),
    ...maybe('tenon', () => ({ length: size(14, 20) })),
    ...maybe('horn', () => size(4, 16)),
    ...maybe('oversize', () => ({ width: size(0, 4), height: size(0, 4) })),
    ...maybe('panel', () => ({ thickness: size(4, 8), species: 'white oak' })),
  };
  const rails = maybe('midRails', () => [{ width: size(40, 50), centre: size(240, 280) }]);
  const arch = maybe('arch', () => ({ rise: size(12, 40), flat: size(8, 16) }));
  return {
    format: 1,
    id: `fixed-${seed}`,
    job: `Fixed ${seed}`,
    units,
    ...(seed % 4 < 2 ? {} : { ways: { strip: 'rip', groove: seed % 8 < 4 ? 'saw' : 'router' } }),
    defaults: fields,
    doors: [
      {
        mark: 'A',
        quantity: 2,
        opening: { width: size(200, 320), height: size(400, 700) },
        ...rails,
        ...arch,
      },
    ],
  };
}

/** Whole numbers that look like chance and are always the same (Numerical Recipes' linear congruence). */
function numbers(seed: number): () => number {
  let state = (seed * 2_654_435_761 + 1) >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state >>> 8;
  };
}
