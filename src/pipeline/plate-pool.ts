/**
 * Threads for the stages of plates. Where the last thread of a Piscina pool dies before it has
 * begun (too little memory), the pool says so of itself and leaves what waits in it waiting: here
 * each plate that waits is told.
 */
import { Piscina } from 'piscina';
import type { PlateJob, PlateReport } from './plate-worker.ts';

export interface PlatePool {
  /** @throws What ended the thread, or all threads. */
  run(job: PlateJob): Promise<PlateReport>;
  close(): Promise<void>;
}

/**
 * @param threadMegabytes Memory for the objects of a thread; Node's own limit where undefined.
 * @param onProgress Hears what a stage is doing.
 */
export function openPlatePool(
  threads: number,
  threadMegabytes: number | undefined,
  onProgress: (progress: string) => void,
): PlatePool {
  const pool = new Piscina<PlateJob, PlateReport>({
    filename: new URL('./plate-worker.ts', import.meta.url).href,
    // A thread takes half a second to begin: none is ended before the last plate (measured).
    minThreads: threads,
    maxThreads: threads,
    ...(threadMegabytes === undefined
      ? {}
      : { resourceLimits: { maxOldGenerationSizeMb: threadMegabytes } }),
  });
  const waiting = new Set<(error: unknown) => void>();
  pool.on('message', ({ progress }: { progress: string }) => {
    onProgress(progress);
  });
  pool.on('error', (error) => {
    if (pool.threads.length > 0) return;
    for (const tell of waiting) tell(error);
  });
  return {
    run: (job) =>
      new Promise((resolve, reject) => {
        waiting.add(reject);
        pool
          .run(job)
          .then(resolve, reject)
          .finally(() => waiting.delete(reject));
      }),
    close: () => pool.destroy(),
  };
}
