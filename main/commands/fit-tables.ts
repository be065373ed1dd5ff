import { doubtful, type FitKind } from '#core/fit/job-fit.ts';
import { tellClosure } from '#core/fit/tell-fit.ts';
import type { Units } from '#core/length/units.ts';
import { plainSpaces } from '#core/length/unbroken.ts';
import { say } from '#core/words/say.ts';

const COLUMNS = ['what', 'exact', 'needs', 'worst', 'likely', 'watch'] as const;

/** A table for each kind of door, in English: its warnings, then every closure in columns. */
export function fitTables(kinds: readonly FitKind[], units: Units): string {
  return kinds.map((kind) => tableOf(kind, units)).join('\n');
}

function tableOf({ doors, closures }: FitKind, units: Units): string {
  const heading = say(
    'office.fit.command.heading',
    { doors: doors.join(', '), units: say(`office.units.${units}`, {}, 'en') },
    'en',
  );
  const warnings = doubtful(closures).map((each) => `! ${tellClosure(each, units, 'en').warning ?? ''}`);
  const rows = [
    COLUMNS.map((column) => say(`office.fit.${column}`, {}, 'en')),
    ...closures.map((each) => {
      const told = tellClosure(each, units, 'en');
      return COLUMNS.map((column) => told[column]);
    }),
  ];
  const widths = COLUMNS.map((_, k) => Math.max(...rows.map((row) => row[k]?.length ?? 0)));
  const lines = rows.map((row) =>
    row
      .map((cell, k) => cell.padEnd(widths[k] ?? 0))
      .join('  ')
      .trimEnd(),
  );
  const said = warnings.length > 0 ? warnings : [say('office.fit.all-closes', {}, 'en')];
  return `${[heading, ...said, '', ...lines].map(plainSpaces).join('\n')}\n`;
}
