import { type Fault, faultOf } from '../fields/fault.ts';
import type { DoorSpec, Job } from '../job/job.ts';
import { readJob } from '../job/read-job.ts';
import type { Length } from '../length/length.ts';
import { typeLength } from '../length/type-length.ts';
import type { Units } from '../length/units.ts';
import { type JobSize, type Measured, SIZE_NAMES, type SizeName } from './measured.ts';

/** What a door is ordered with, of what is measured for a whole job. */
export function nominalOf(spec: Pick<DoorSpec, 'thickness' | 'groove'>, name: SizeName): Length {
  return name === 'thickness' ? spec.thickness : spec.groove.width;
}

/** The sizes that the doors of a job are ordered with, each once, from the smallest. */
export function nominals({ doors }: Pick<Job, 'doors'>, name: SizeName): Length[] {
  const found: Length[] = [];
  for (const { spec } of doors) {
    const size = nominalOf(spec, name);
    if (!found.some((each) => each.equals(size))) found.push(size);
  }
  return found.toSorted((a, b) => a.compare(b));
}

/** The same of a job file, as they are typed; none where it cannot be read. */
export function nominalsIn(file: unknown): Readonly<Record<SizeName, readonly string[]>> {
  const read = readJob(file);
  const of = (name: SizeName) => (read.ok ? listed(nominals(read.value, name), read.value.units) : []);
  return { thickness: of('thickness'), grooveWidth: of('grooveWidth') };
}

/** What a size that is ordered came out as; undefined where it was not measured. */
export function asCutOf(size: JobSize | undefined, nominal: Length): Length | undefined {
  if (size === undefined) return undefined;
  return 'all' in size ? size.all : size.each.find(({ of }) => of.equals(nominal))?.is;
}

/** What was measured for a whole job and does not say of which size, or says it of one that no door is ordered with. */
export function nominalFaults(job: Pick<Job, 'doors' | 'units'>, measured: Measured): Fault[] {
  return SIZE_NAMES.flatMap((name) => {
    const size = measured[name];
    if (size === undefined) return [];
    const sizes = nominals(job, name);
    const list = listed(sizes, job.units);
    if ('all' in size) {
      const is = typeLength(size.all, job.units);
      const how = { typed: `[${list.map((of) => `{"of": "${of}", "is": "${is}"}`).join(', ')}]` };
      return sizes.length < 2
        ? []
        : [faultOf(name, `sizes-several.${name}`, { sizes: { typed: list.join(', ') }, how })];
    }
    return size.each.flatMap(({ of }, k) =>
      sizes.some((each) => each.equals(of))
        ? []
        : [
            faultOf(`${name}[${k}].of`, `size-unknown.${name}`, {
              size: { typed: typeLength(of, job.units) },
              sizes: { typed: list.join(', ') },
            }),
          ],
    );
  });
}

function listed(sizes: readonly Length[], units: Units): string[] {
  return sizes.map((size) => typeLength(size, units));
}
