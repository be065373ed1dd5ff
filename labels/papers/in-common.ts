import type { CardLine } from './card-settings.ts';

/** What several set-ups have in common, and what each has for itself, in the order of each. */
export interface InCommon {
  readonly common: readonly CardLine[];
  readonly own: readonly (readonly CardLine[])[];
}

/**
 * Settings that are the same for all set-ups once; where only the value differs, what it is measured from once. One
 * set-up alone has all of it in common.
 */
export function inCommon(setups: readonly (readonly CardLine[])[]): InCommon {
  const named = setups.map((lines) => new Map(lines.map((line) => [keyOf(line), line])));
  const everywhere = (line: CardLine, holds: (other: CardLine) => boolean) =>
    named.every((lines) => {
      const other = lines.get(keyOf(line));
      return other !== undefined && holds(other);
    });
  const isShared = (line: CardLine) =>
    everywhere(line, ({ value, from }) => value === line.value && from === line.from);
  const isFromShared = (line: CardLine) =>
    line.from !== '' && everywhere(line, ({ from }) => from === line.from);
  return {
    common: (setups[0] ?? []).flatMap((line) =>
      isShared(line) ? [line] : isFromShared(line) ? [{ ...line, value: '' }] : [],
    ),
    own: setups.map((lines) =>
      lines
        .filter((line) => !isShared(line))
        .map((line) => (isFromShared(line) ? { ...line, from: '' } : line)),
    ),
  };
}

function keyOf({ place, name }: CardLine): string {
  return `${place}: ${name}`;
}
