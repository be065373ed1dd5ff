import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { planJob } from '#core/planning/plan-job.ts';
import { speakSaying } from '#core/telling/speak-saying.ts';
import type { Plan } from '#core/plan/plan.ts';
import { allStocks } from '#core/stickers/read-stocks.ts';
import { say } from '#core/words/say.ts';
import { calibrationPdf, stickersPdf } from '#labels/index.ts';
import { readEnvironment } from '../hub/environment.ts';
import { codesKnown } from './codes-known.ts';
import { endWith } from './end-with.ts';
import { endWithFaults, jobFrom } from './read-job-file.ts';
import { profileFrom } from './read-profile-file.ts';
import { stickerReport } from './sticker-report.ts';

const USAGE = `stickers: expected JOB.json OUT.pdf [--stock NAME] [--from POSITION] [--symbol code128|datamatrix] [--profile FILE]
  or --calibrate OUT.pdf [--stock NAME] [--units in|mm] [--profile FILE]`;

/** Writes a job's stickers as a PDF. Exit 2: something in the call or the file is wrong; 3: the hub knows this job under other codes. */
async function main(): Promise<void> {
  const { values, positionals } = readArguments();
  if (values.calibrate) return calibrate(values, positionals);
  const [path, out, ...more] = positionals;
  if (path === undefined || out === undefined || more.length > 0) usage();
  if (values.symbol !== 'code128' && values.symbol !== 'datamatrix') usage();
  const job = jobFrom(path);
  const profile = profileFrom(values.profile, job.units);
  const planned = planJob(job, profile, {});
  if (!planned.ok) endWithFaults(planned.faults);
  await refuseOtherCodes(planned.value);
  const stocks = allStocks(profile.stocks);
  const made = await stickersPdf(planned.value, {
    stock: values.stock,
    stocks,
    from: Number(values.from),
    symbol: values.symbol,
  });
  if (!made.ok)
    return fail(
      made.fault === 'stock-unknown'
        ? say('api.stock-unknown', { stock: values.stock, stocks: made.stocks.join(', ') })
        : made.fault === 'codes-unknown'
          ? say('api.codes-unknown', { codes: made.codes.join(', ') })
          : speakSaying(made.told, 'en'),
    );
  write(out, made.pdf);
  for (const line of stickerReport(made, values.stock, out)) process.stderr.write(`${line}\n`);
}

/** A page to hold against a stock; what differs goes into the profile. */
async function calibrate(
  values: ReturnType<typeof readArguments>['values'],
  positionals: readonly string[],
): Promise<void> {
  const [out, ...more] = positionals;
  if (out === undefined || more.length > 0 || (values.units !== 'in' && values.units !== 'mm')) usage();
  const stocks = allStocks(profileFrom(values.profile, values.units).stocks);
  const pdf = await calibrationPdf(values.stock, stocks);
  if (pdf === null)
    return fail(say('api.stock-unknown', { stock: values.stock, stocks: Object.keys(stocks).join(', ') }));
  write(out, pdf);
}

function write(out: string, pdf: Uint8Array): void {
  try {
    writeFileSync(out, pdf);
  } catch (error) {
    fail(error instanceof Error ? error.message : String(error));
  }
}

function fail(message: string): never {
  return endWith(2, `stickers: ${message}`);
}

/** If the hub's data hold this job under other codes, stickers from the file would not be known at the stations. */
async function refuseOtherCodes(plan: Plan): Promise<void> {
  const environment = readEnvironment(process.env);
  if (!environment.ok) return;
  const known = await codesKnown(plan, environment.value.data);
  if (!known.ok) endWith(3, `stickers: ${known.message}`);
  const { unknown } = known;
  if (unknown.length === 0) return;
  const named = `${unknown.slice(0, 5).join(', ')}${unknown.length > 5 ? ' …' : ''}`;
  endWith(
    3,
    `stickers: the hub holds this job without ${unknown.length} of these codes (${named}): print from the office, or save the file there first`,
  );
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: {
        stock: { type: 'string', default: 'letter-3x10' },
        from: { type: 'string', default: '1' },
        symbol: { type: 'string', default: 'code128' },
        profile: { type: 'string' },
        calibrate: { type: 'boolean', default: false },
        units: { type: 'string', default: 'in' },
      },
    });
  } catch {
    return usage();
  }
}

function usage(): never {
  return endWith(2, USAGE);
}

void main();
