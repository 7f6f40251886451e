/**
 * One build at a time in one cache folder. The lock is a file that names its owner; a second
 * build waits and says for whom. A lock whose owner is gone is taken over.
 *
 * An owner on another machine or in another container cannot be asked whether it lives, so each
 * owner touches its lock while it works. How long ago that was is read off the file system's own
 * clock, with a file made for the purpose: the clocks of two machines may differ, and a clock may
 * be set back.
 */
import { randomUUID } from 'node:crypto';
import { link, mkdir, open, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { isRunning, ownerSchema, ownIdentity, type Owner } from './lock-owner.ts';

/** An owner touches its lock this often. */
const beatMilliseconds = 10_000;
/** An owner on another machine that has been silent for this long is taken for dead. */
const silenceMilliseconds = 180_000;
/** On a slow network folder this much may lie between making a lock and writing a name into it. */
const writingMilliseconds = 10_000;

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
  const me = await ownIdentity();
  while (!(await take(file, me))) {
    const owner = await readOwner(file);
    if (owner === 'gone') continue;
    if (owner === 'unwritten' && (await silence(file)) < writingMilliseconds) {
      await sleep(200);
      continue;
    }
    if (owner === 'unwritten' || owner === 'unreadable' || !(await isAlive(owner, file))) {
      await discard(file, owner);
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
    await release(file, me);
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

async function take(file: string, me: Owner): Promise<boolean> {
  try {
    const handle = await open(file, 'wx');
    await handle.writeFile(JSON.stringify(me)).finally(() => handle.close());
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}

/** One that was silent too long may have been taken for dead, and its lock be another's by now. */
async function release(file: string, me: Owner): Promise<void> {
  const owner = await readOwner(file).catch(() => 'gone' as const);
  if (isSame(owner, me)) await rm(file, { force: true }).catch(() => undefined);
}

type Found = Owner | 'gone' | 'unreadable' | 'unwritten';

const isSame = (one: Found, other: Found): boolean => JSON.stringify(one) === JSON.stringify(other);

async function readOwner(file: string): Promise<Found> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return 'gone';
    throw error;
  }
  if (text === '') return 'unwritten';
  try {
    return ownerSchema.parse(JSON.parse(text));
  } catch {
    return 'unreadable';
  }
}

/**
 * Rename first: of two builds that find the same dead lock only one can. What was renamed may by
 * then be the lock of a build that was quicker: it is looked at again, and put back.
 */
async function discard(file: string, judged: Found): Promise<void> {
  const aside = `${file}.${randomUUID()}.dead`;
  try {
    await rename(file, aside);
  } catch {
    return;
  }
  const found = await readOwner(aside);
  if (!isSame(found, judged)) await link(aside, file).catch(() => undefined);
  await rm(aside, { force: true });
}

async function isAlive(owner: Owner, file: string): Promise<boolean> {
  return (await isRunning(owner)) ?? (await silence(file)) < silenceMilliseconds;
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
