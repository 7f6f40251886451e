import { expect, test } from 'vitest';
import { expectedSeconds, waitWords } from '../../src/pipeline/demonstration-wait.ts';
import { demonstrationObjects } from '../../src/pipeline/demonstration/objects.ts';

test('a wait is told in tens of seconds, then in half minutes, never too short', () => {
  const told = [3, 11, 49, 51, 60, 61, 100, 150].map(waitWords);
  expect(told).toEqual([
    'about 10 seconds',
    'about 20 seconds',
    'about 50 seconds',
    'about a minute',
    'about a minute',
    'about 1.5 minutes',
    'about 2 minutes',
    'about 2.5 minutes',
  ]);
});

test('a scene that was traced before costs nothing', async () => {
  const tasks = demonstrationObjects.map((object) => ({ object, shoots: [] }));
  const fresh = await expectedSeconds(tasks, () => Promise.resolve(false));
  const kept = await expectedSeconds(tasks, () => Promise.resolve(true));
  expect(fresh.rendering).toBeGreaterThan(20);
  expect(kept).toEqual({ rendering: 0, stages: 0 });
});
