import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { paperKind, paperSize, PAPER_KINDS } from '#core/api/prints-api.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { counted, say } from '#core/words/say.ts';
import { papersPdf } from '#labels/papers/papers-pdf.ts';
import { endWith } from './end-with.ts';
import { endWithFaults, readJsonFile } from './read-job-file.ts';

const USAGE = `papers: expected JOB.json --kind ${PAPER_KINDS.join('|')} [--paper letter|a4] [--doors MARK,MARK-2] --out FILE.pdf`;

/** Writes a job's papers as a PDF: setup cards, full-size templates, rods or the job sheet. Exit code 2: something in the input is wrong. */
async function main(): Promise<void> {
  const { values, positionals } = readArguments();
  const [path, ...more] = positionals;
  const kind = paperKind.safeParse(values.kind);
  const paper = paperSize.safeParse(values.paper);
  if (path === undefined || more.length > 0 || values.out === undefined) usage();
  if (!kind.success || !paper.success) usage();
  const file = readJsonFile(path);
  if (!file.ok) endWithFaults(file.faults);
  const planned = planFile(file.value, { why: 'en' });
  if (!planned.ok) endWithFaults(planned.faults);
  const made = await papersPdf(planned.value, {
    kind: kind.data,
    paper: paper.data,
    ...(values.doors === undefined ? {} : { doors: values.doors.split(',').filter((each) => each !== '') }),
  });
  if (!made.ok)
    return fail(
      made.fault === 'no-arch'
        ? say('paper.no-arch')
        : say('paper.doors-unknown', { doors: made.doors.join(', ') }),
    );
  try {
    writeFileSync(values.out, made.pdf);
  } catch (error) {
    return fail(error instanceof Error ? error.message : String(error));
  }
  process.stderr.write(`${counted('paper.count.pages', made.pages)} on ${paper.data}: ${values.out}\n`);
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: {
        kind: { type: 'string' },
        paper: { type: 'string', default: 'letter' },
        doors: { type: 'string' },
        out: { type: 'string' },
      },
    });
  } catch {
    return usage();
  }
}

function fail(message: string): never {
  return endWith(2, `papers: ${message}`);
}

function usage(): never {
  return endWith(2, USAGE);
}

void main();
