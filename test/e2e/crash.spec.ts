import { expect, test } from '@playwright/test';
import { killRounds } from '../proof/kill-rounds.ts';
import { freshData, removeData } from './hub-process.ts';

test('every answered mark outlives five kills at random moments, and none is there twice', async () => {
  test.setTimeout(120_000);
  const data = freshData();
  try {
    const rounds = await killRounds(data, 5, Math.random);
    expect(rounds.reduce((sum, { answered }) => sum + answered, 0)).toBeGreaterThan(5);
  } finally {
    removeData(data);
  }
});
