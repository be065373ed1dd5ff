/** A step of a work; the names of its parts where it is not for all of them. */
export interface CardStep {
  readonly parts: string;
  readonly text: string;
}

/** Whose steps they are: its parts, and how its work goes. */
export interface StepsOf {
  readonly parts: string;
  readonly how: readonly string[];
}

/** Any number in a line, with its unit: "7/8 in", "14 3/4", "≈ 10.5 mm", "8". */
const NUMBER = /(?:≈\s*)?\d+(?:[\s\u00a0]\d+\/\d+|\/\d+|[.,]\d+)?(?:\u00a0(?:in|mm)(?![a-z]))?/g;
/** Stands for each set-up's own number, which is among its settings. */
export const OWN_NUMBER = '…';

/**
 * The steps of several set-ups of one work, each once in the order of the work: what differs by its numbers alone is one
 * step, with a sign for each number that is not the same for all. A step that is not for all says for which parts it is.
 */
export function joinSteps(setups: readonly StepsOf[]): CardStep[] {
  const joined: { shape: string; texts: string[]; of: Set<number> }[] = [];
  const placeOf = (shape: string) => joined.findIndex((each) => each.shape === shape);
  for (const [k, { how }] of setups.entries()) {
    const shapes = how.map((text) => text.replace(NUMBER, OWN_NUMBER));
    let at = -1;
    for (const [n, text] of how.entries()) {
      const known = placeOf(shapes[n] ?? '');
      if (known >= 0) {
        joined[known]?.texts.push(text);
        joined[known]?.of.add(k);
        at = Math.max(at, known);
        continue;
      }
      // Before whatever comes next of this set-up that was told already.
      const next = shapes
        .slice(n + 1)
        .map(placeOf)
        .find((each) => each > at);
      at = next ?? joined.length;
      joined.splice(at, 0, { shape: shapes[n] ?? '', texts: [text], of: new Set([k]) });
    }
  }
  const steps = joined.map(({ texts, of }) => ({
    text: inOne(texts),
    parts: of.size === setups.length ? '' : namesOf([...of].map((k) => setups[k]?.parts ?? '')),
  }));
  return steps.reduce<CardStep[]>(withNamesOnce, []);
}

/** What follows each other and is for the same parts, but not for all, is told behind their names once. */
function withNamesOnce(told: readonly CardStep[], step: CardStep): CardStep[] {
  const last = told.at(-1);
  return step.parts !== '' && last?.parts === step.parts
    ? [...told.slice(0, -1), { ...last, text: `${last.text} ${step.text}` }]
    : [...told, step];
}

/** Texts that differ by numbers alone in one: a number that all have stays. */
function inOne(texts: readonly string[]): string {
  const [first = '', ...others] = texts;
  const numbers = others.map((text) => text.match(NUMBER) ?? []);
  let k = -1;
  return first.replace(NUMBER, (number) => {
    k += 1;
    return numbers.every((all) => all[k] === number) ? number : OWN_NUMBER;
  });
}

/** The parts of some set-ups, each once. */
function namesOf(parts: readonly string[]): string {
  return [...new Set(parts)].filter((name) => name !== '').join(', ');
}
