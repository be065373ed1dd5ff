import { join } from 'node:path';
import { expect, test } from 'vitest';
import { buildIfStale } from '../../main/start/build-if-stale.mjs';
import { freshData, removeData } from '../e2e/hub-process.ts';
import { killRounds } from './kill-rounds.ts';
import { seeded } from './seeded.ts';

const ROUNDS = Number(process.env.PROOF_ROUNDS ?? '200');

test(`every answered mark outlives ${ROUNDS} kills at random moments, and none is there twice`, async () => {
  expect(buildIfStale(join(import.meta.dirname, '..', '..'))).toBe(true);
  const { seed, random } = seeded();
  const data = freshData();
  try {
    const rounds = await killRounds(data, ROUNDS, random);
    const sum = (of: (round: (typeof rounds)[number]) => number) =>
      rounds.reduce((all, each) => all + of(each), 0);
    const answered = sum((each) => each.answered);
    console.log(
      `crash proof: seed ${seed}, ${rounds.length} kills, ${answered} marks answered, ${sum((each) => each.open)} cut off unanswered`,
    );
    expect(rounds).toHaveLength(ROUNDS);
    expect(answered).toBeGreaterThan(ROUNDS);
  } finally {
    removeData(data);
  }
});
