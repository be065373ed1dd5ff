import { parseArgs } from 'node:util';
import { jobFit } from '#core/fit/job-fit.ts';
import { printFit } from '#core/fit/print-fit.ts';
import { planJob } from '#core/planning/plan-job.ts';
import { endWith } from './end-with.ts';
import { fitTables } from './fit-tables.ts';
import { endWithFaults, jobFrom } from './read-job-file.ts';
import { profileFrom } from './read-profile-file.ts';

const USAGE = 'fit: expected JOB.json [--profile FILE] [--json]';

/** Prints how each kind of door of a job closes by the shop's own ±: as tables, or as JSON. Faults as `plan` has them. */
function main(): void {
  const { values, positionals } = readArguments();
  const [path, ...more] = positionals;
  if (path === undefined || more.length > 0) usage();
  const job = jobFrom(path);
  const profile = profileFrom(values.profile, job.units);
  const planned = planJob(job, profile);
  if (!planned.ok) endWithFaults(planned.faults);
  const plan = planned.value;
  process.stdout.write(
    values.json
      ? `${JSON.stringify(printFit(plan, profile.tolerances), null, 2)}\n`
      : fitTables(jobFit(plan, profile.tolerances), plan.units),
  );
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: { profile: { type: 'string' }, json: { type: 'boolean', default: false } },
    });
  } catch {
    return usage();
  }
}

function usage(): never {
  return endWith(2, USAGE);
}

main();
