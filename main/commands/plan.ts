import { parseArgs } from 'node:util';
import { NOTHING_MEASURED } from '#core/measured/measured.ts';
import { readMeasured } from '#core/measured/read-measured.ts';
import { planJob } from '#core/planning/plan-job.ts';
import { settablePlan } from '#core/settable/settable-door.ts';
import { readStep, STEPS } from '#core/settable/step.ts';
import { speakPlan } from '#core/telling/speak-plan.ts';
import { endWith } from './end-with.ts';
import { endWithFaults, jobFrom, readJsonFile } from './read-job-file.ts';
import { profileFrom } from './read-profile-file.ts';

const USAGE = 'plan: expected JOB.json [--why] [--settable STEP] [--profile FILE] [--measured FILE]';

/** Prints the plan of a job file as JSON, exact or as machines are set to a step, its words English; faults go to stderr, a line each, with exit code 2. */
function main(): void {
  const { values, positionals } = readArguments();
  const [path, ...more] = positionals;
  if (path === undefined || more.length > 0) usage();
  const job = jobFrom(path);
  const { units } = job;
  const step = values.settable === undefined ? null : readStep(values.settable, units);
  if (step === null && values.settable !== undefined)
    endWith(2, `plan: --settable ${values.settable}: expected ${STEPS[units].join(', ')} (${units})`);
  const profile = profileFrom(values.profile, units);
  let measured = NOTHING_MEASURED;
  if (values.measured !== undefined) {
    const text = readJsonFile(values.measured);
    if (!text.ok) endWithFaults(text.faults);
    const read = readMeasured(text.value, units);
    if (!read.ok) endWithFaults(read.faults);
    measured = read.value;
  }
  const planned = planJob(job, profile, { why: values.why ? 'en' : null, measured });
  if (!planned.ok) endWithFaults(planned.faults);
  const plan = step === null ? planned.value : settablePlan(planned.value, step);
  process.stdout.write(`${JSON.stringify(speakPlan(plan, 'en'), null, 2)}\n`);
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: {
        why: { type: 'boolean', default: false },
        settable: { type: 'string' },
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
