/**
 * One build at a time in one cache folder. The lock is a file that names its owner; a second
 * build waits and says for whom. A lock whose owner is gone is taken over.
 *
 * An owner on another machine cannot be asked whether it lives, so each owner touches its lock
 * while it works. How long ago that was is read off the file system's own clock, with a file
 * made for the purpose: the clocks of two machines may differ, and a clock may be set back.
 */
import { randomUUID } from 'node:crypto';
import { mkdir, open, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { dirname } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { z } from 'zod';

const ownerSchema = z.strictObject({
  pid: z.number().int(),
  host: z.string(),
  /** ISO 8601, UTC. */
  since: z.string(),
});
type Owner = z.output<typeof ownerSchema>;

/** An owner touches its lock this often. */
const beatMilliseconds = 10_000;
/** An owner on another machine that has been silent for this long is taken for dead. */
const silenceMilliseconds = 180_000;

export interface LockOptions {
  /** Told once when the lock is held by someone else. */
  readonly onWait?: (sentence: string) => void;
  /** Give up after this long, milliseconds. */
  readonly patience?: number;
}

/**
 * Run `work` while holding the lock at `file`.
 * @throws Error naming the owner and the age of the lock when patience runs out.
 */
export async function withLock<T>(
  file: string,
  work: () => Promise<T>,
  { onWait, patience = 30 * 60_000 }: LockOptions = {},
): Promise<T> {
  await mkdir(dirname(file), { recursive: true });
  const deadline = performance.now() + patience;
  let told = false;
  while (!(await take(file))) {
    const owner = await readOwner(file);
    if (owner === 'gone') continue;
    if (owner === 'unreadable' || !(await isAlive(owner, file))) {
      await discard(file);
      continue;
    }
    if (performance.now() > deadline) {
      throw new Error(
        `${describe(owner)} holds the lock ${file}. Wait until that build ends, or stop it.`,
      );
    }
    if (!told) onWait?.(`Waiting: ${describe(owner)} is building with the same cache folder.`);
    told = true;
    await sleep(200);
  }
  const beat = setInterval(() => {
    // Written, not given a time: only then does the file system's clock say when.
    void touch(file).catch(() => undefined);
  }, beatMilliseconds);
  beat.unref();
  try {
    return await work();
  } finally {
    clearInterval(beat);
    await rm(file, { force: true });
  }
}

/** Wait until nobody alive holds the lock at `file`, without taking it. */
export async function whenFree(file: string, options: LockOptions = {}): Promise<void> {
  await withLock(file, () => Promise.resolve(), options);
}

async function touch(file: string): Promise<void> {
  // `r+` so that a lock that was taken away is not made again.
  const handle = await open(file, 'r+');
  try {
    const { buffer } = await handle.read(Buffer.alloc(1), 0, 1, 0);
    await handle.write(buffer, 0, 1, 0);
  } finally {
    await handle.close();
  }
}

async function take(file: string): Promise<boolean> {
  try {
    const handle = await open(file, 'wx');
    const owner: Owner = { pid: process.pid, host: hostname(), since: new Date().toISOString() };
    await handle.writeFile(JSON.stringify(owner)).finally(() => handle.close());
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}

async function readOwner(file: string): Promise<Owner | 'gone' | 'unreadable'> {
  // A taker has created the file but not yet written its name: look again before judging.
  for (let look = 0; look < 5; look += 1) {
    try {
      const text = await readFile(file, 'utf8');
      if (text !== '') return ownerSchema.parse(JSON.parse(text));
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return 'gone';
    }
    await sleep(40);
  }
  return 'unreadable';
}

/** Rename first: of two builds that find the same dead lock only one can, so no live lock is removed. */
async function discard(file: string): Promise<void> {
  const aside = `${file}.${process.pid}.dead`;
  await rename(file, aside).catch(() => undefined);
  await rm(aside, { force: true });
}

async function isAlive(owner: Owner, file: string): Promise<boolean> {
  if (owner.host !== hostname()) return (await silence(file)) < silenceMilliseconds;
  try {
    process.kill(owner.pid, 0);
    return true;
  } catch (error) {
    // EPERM: it lives, but belongs to somebody else.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Milliseconds since a lock was last touched, by the clock of the file system it lies on. */
async function silence(file: string): Promise<number> {
  const probe = `${file}.${randomUUID()}.probe`;
  try {
    await writeFile(probe, '');
    const [now, last] = await Promise.all([stat(probe), stat(file)]);
    return now.mtimeMs - last.mtimeMs;
  } catch {
    // The lock went while it was looked at: as good as touched just now, the caller looks again.
    return 0;
  } finally {
    await rm(probe, { force: true });
  }
}

function describe(owner: Owner): string {
  const minutes = Math.max(0, Math.round((Date.now() - Date.parse(owner.since)) / 60_000));
  return `process ${owner.pid} on ${owner.host} (for ${minutes} min)`;
}
