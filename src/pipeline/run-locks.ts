/**
 * Who may build in a cache folder at the same time: one whole build, or any shares of one, each
 * share once. A share passes the lock of the whole only to leave its own beside it; a whole
 * build keeps that lock, so no new share can begin, and waits for those that have begun.
 */
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { whenFree, withLock, type LockOptions } from './lock.ts';

const shareLock = /^lock-\d+-of-\d+$/;

export async function withWholeLock<T>(
  cache: string,
  work: () => Promise<T>,
  options: LockOptions,
): Promise<T> {
  return withLock(
    join(cache, 'lock'),
    async () => {
      for (const name of await readdir(cache)) {
        if (shareLock.test(name)) await whenFree(join(cache, name), options);
      }
      return work();
    },
    options,
  );
}

export async function withShareLock<T>(
  cache: string,
  part: string,
  work: () => Promise<T>,
  options: LockOptions,
): Promise<T> {
  const own = join(cache, `lock-${part}`);
  // Waited for before the gate is taken: two runs of one share must not keep the others out.
  await whenFree(own, options);
  const running = await withLock(
    join(cache, 'lock'),
    () =>
      new Promise<{ readonly result: Promise<T> }>((begun, failed) => {
        const result: Promise<T> = withLock(
          own,
          () => {
            begun({ result });
            return work();
          },
          options,
        );
        result.catch(failed);
      }),
    options,
  );
  return running.result;
}
