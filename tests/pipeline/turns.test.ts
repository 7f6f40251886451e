import { setTimeout as sleep } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { takeTurns } from '../../src/pipeline/turns.ts';

test('begins work in the order asked for, never more pieces than allowed', async () => {
  const turn = takeTurns(2);
  const begun: number[] = [];
  let [running, most] = [0, 0];
  const piece = (k: number) =>
    turn(async () => {
      begun.push(k);
      running += 1;
      most = Math.max(most, running);
      await sleep(k % 3 === 0 ? 12 : 3);
      running -= 1;
      return 10 * k;
    });
  const results = await Promise.all([0, 1, 2, 3, 4, 5, 6].map(piece));
  expect(begun).toEqual([0, 1, 2, 3, 4, 5, 6]);
  expect(most).toBe(2);
  expect(results).toEqual([0, 10, 20, 30, 40, 50, 60]);
});

test('goes on after a piece that failed', async () => {
  const turn = takeTurns(1);
  const failed = turn(() => Promise.reject(new Error('no light')));
  const next = turn(() => Promise.resolve('lit'));
  await expect(failed).rejects.toThrow('no light');
  expect(await next).toBe('lit');
});
