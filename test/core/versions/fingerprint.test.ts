import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { version } from '../../../package.json' with { type: 'json' };
import { planFile } from '#core/planning/plan-file.ts';
import { fingerprint, type Fingerprint } from './fingerprint.ts';
import { fixedJobs } from './fixed-jobs.ts';

const RECORD = join(import.meta.dirname, 'fingerprints.json');

function recorded(): Record<string, Fingerprint> {
  return existsSync(RECORD) ? (JSON.parse(readFileSync(RECORD, 'utf8')) as Record<string, Fingerprint>) : {};
}

test('plans and fold are those of this version: who changes them raises the version, since snapshots hang on it', () => {
  const now = fingerprint();
  if (process.env.RECORD_PLANS === '1')
    writeFileSync(RECORD, `${JSON.stringify({ ...recorded(), [version]: now }, null, 2)}\n`);
  expect(
    now,
    `what version ${version} prints or folds is not what was recorded of it: raise the version in package.json, then record it with "npm run -s record-plans"`,
  ).toEqual(recorded()[version]);
});

test('the jobs that are fixed for this say much: most can be planned, and they have every kind of part', () => {
  const plans = fixedJobs().flatMap((job) => {
    const planned = planFile(job);
    return planned.ok ? [planned.value] : [];
  });
  expect(plans.length).toBeGreaterThan(40);
  const stages = new Set(
    plans
      .flatMap(({ doors }) => doors.flatMap(({ parts }) => parts.flatMap((part) => part.stages)))
      .map(({ stage }) => stage),
  );
  for (const stage of ['strip', 'arch', 'bead', 'groove', 'tenon'])
    expect([...stages].join(' ')).toContain(stage);
  expect(new Set(plans.map(({ units }) => units)).size).toBe(2);
});
