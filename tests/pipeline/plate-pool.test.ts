import { expect, test } from 'vitest';
import { openPlatePool } from '../../src/pipeline/plate-pool.ts';
import type { PlateJob } from '../../src/pipeline/plate-worker.ts';

test('a thread that dies before it begins is told to every plate that waits for it', async () => {
  // Too little for the modules of the stages; the job is never looked at.
  const pool = openPlatePool(1, 8, () => undefined);
  const job = {} as PlateJob;
  try {
    for (const jobs of [[job, job], [job]]) {
      const outcomes = await Promise.allSettled(jobs.map((one) => pool.run(one)));
      expect(outcomes.map(({ status }) => status)).toEqual(jobs.map(() => 'rejected'));
    }
  } finally {
    await pool.close();
  }
}, 30_000);
