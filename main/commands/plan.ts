import { parseArgs } from 'node:util';
import { readJob } from '#core/job/read-job.ts';
import { NOTHING_MEASURED } from '#core/measured/measured.ts';
import { readMeasured } from '#core/measured/read-measured.ts';
import { planJob } from '#core/planning/plan-job.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';
import { endWith } from './end-with.ts';
import { endWithFaults, readJsonFile } from './read-job-file.ts';
import { profileFrom } from './read-profile-file.ts';

const USAGE = 'plan: expected JOB.json [--why] [--profile FILE] [--measured FILE]';

/** Prints the plan of a job file as JSON, its words English; faults go to stderr, a line each, with exit code 2. */
function main(): void {
  const { values, positionals } = readArguments();
  const [path, ...more] = positionals;
  if (path === undefined || more.length > 0) usage();
  const file = readJsonFile(path);
  if (!file.ok) endWithFaults(file.faults);
  const job = readJob(file.value);
  if (!job.ok) endWithFaults(job.faults);
  const profile = profileFrom(values.profile, job.value.units);
  let measured = NOTHING_MEASURED;
  if (values.measured !== undefined) {
    const text = readJsonFile(values.measured);
    if (!text.ok) endWithFaults(text.faults);
    const read = readMeasured(text.value, job.value.units);
    if (!read.ok) endWithFaults(read.faults);
    measured = read.value;
  }
  const planned = planJob(job.value, profile, { why: values.why ? 'en' : null, measured });
  if (!planned.ok) endWithFaults(planned.faults);
  process.stdout.write(`${JSON.stringify(speakPlan(planned.value, 'en'), null, 2)}\n`);
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: {
        why: { type: 'boolean', default: false },
        profile: { type: 'string' },
        measured: { type: 'string' },
      },
    });
  } catch {
    return usage();
  }
}

function usage(): never {
  return endWith(2, USAGE);
}

main();
