import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { planFile } from '#core/plan/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';
import { STOCKS, stickersPdf } from '#labels/index.ts';
import { readEnvironment } from '../hub/environment.ts';
import { documentName, readJobDocument } from '../store/job-document.ts';
import { openJob } from '../store/stored-job.ts';
import { endWithFaults, readJsonFile } from './read-job-file.ts';

const USAGE =
  'stickers: expected JOB.json OUT.pdf [--stock NAME] [--from POSITION] [--symbol code128|datamatrix]';

/** Writes a job's stickers as a PDF. Exit 2: something in the call or the file is wrong; 3: the hub knows this job under other codes. */
async function main(): Promise<void> {
  const { values, positionals } = readArguments();
  const [path, out, ...more] = positionals;
  if (path === undefined || out === undefined || more.length > 0) usage();
  if (values.symbol !== 'code128' && values.symbol !== 'datamatrix') usage();
  const file = readJsonFile(path);
  if (!file.ok) endWithFaults(file.faults);
  const planned = planFile(file.value);
  if (!planned.ok) endWithFaults(planned.faults);
  refuseOtherCodes(planned.value);
  const made = await stickersPdf(planned.value, {
    stock: values.stock,
    from: Number(values.from),
    symbol: values.symbol,
  });
  if (!made.ok) {
    const message =
      made.fault === 'stock-unknown'
        ? `there is no sticker stock ${values.stock}; there are ${Object.keys(STOCKS).join(', ')}`
        : made.fault === 'codes-unknown'
          ? `no such parts: ${made.codes.join(', ')}`
          : made.message;
    process.stderr.write(`stickers: ${message}\n`);
    process.exit(2);
  }
  try {
    writeFileSync(out, made.pdf);
  } catch (error) {
    process.stderr.write(`stickers: ${error instanceof Error ? error.message : String(error)}\n`);
    process.exit(2);
  }
  process.stderr.write(
    `${made.stickers} stickers for ${made.parts} parts on ${made.pages} pages of ${values.stock}: ${out}\n`,
  );
  if (made.doubled.length > 0)
    process.stderr.write(
      `${made.doubled.length} parts need two stickers or more, marked 1/2, 2/2: ${made.doubled.slice(0, 10).join(', ')}${made.doubled.length > 10 ? ' …' : ''}\n`,
    );
}

/** If the hub's data holds this job under other codes, stickers from the file would not be known at the stations. */
function refuseOtherCodes(plan: Plan): void {
  const environment = readEnvironment(process.env);
  if (!environment.ok) return;
  const path = join(environment.value.data, 'jobs', documentName(plan.id));
  if (!existsSync(path)) return;
  const kept = openJob(readJobDocument(readFileSync(path, 'utf8')));
  if (!kept.ok) return;
  const unknown = plan.doors
    .flatMap(({ parts }) => parts.map(({ code }) => code))
    .filter((code) => !kept.value.index.parts.has(code));
  if (unknown.length === 0) return;
  process.stderr.write(
    `stickers: the hub holds this job without ${unknown.length} of these parts (${unknown.slice(0, 5).join(', ')}…): print from the office, or save the file there first\n`,
  );
  process.exit(3);
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: {
        stock: { type: 'string', default: 'letter-3x10' },
        from: { type: 'string', default: '1' },
        symbol: { type: 'string', default: 'code128' },
      },
    });
  } catch {
    return usage();
  }
}

function usage(): never {
  process.stderr.write(`${USAGE}\n`);
  process.exit(2);
}

void main();
