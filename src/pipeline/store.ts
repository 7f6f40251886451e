/**
 * Results that are made once. A result is a folder or a JSON file under a key; it is made in
 * a private folder and renamed into place, so that what has a name is whole. A build killed at
 * any moment leaves only private folders behind, and the next build removes them.
 */
import { randomUUID } from 'node:crypto';
import { mkdir, open, readFile, rename, rm, stat, utimes } from 'node:fs/promises';
import { dirname, join } from 'node:path';

export interface Store {
  /** Folder of all results. */
  readonly root: string;
  /** Folder of unfinished ones, on the same file system. */
  readonly scratch: string;
  /** Asked when a result has been made, before it gets its name; throws where it must get none. */
  readonly sound?: (() => Promise<void>) | undefined;
}

/** Counts what a run had to make and what it found ready. */
export interface StoreTally {
  made: number;
  found: number;
}

/** Make a private folder, empty, that the caller removes or renames. */
export async function privateFolder(store: Store): Promise<string> {
  const folder = join(store.scratch, `${process.pid}-${randomUUID()}`);
  await mkdir(folder, { recursive: true });
  return folder;
}

/**
 * The folder kept under `kind/key`; made by `make` in a private folder where it is not there yet.
 * @throws whatever `make` throws, after the private folder is gone.
 */
export async function keepFolder(
  store: Store,
  kind: string,
  key: string,
  make: (folder: string) => Promise<void>,
  tally?: StoreTally,
): Promise<string> {
  const place = join(store.root, kind, key);
  if (await exists(place)) {
    if (tally) tally.found += 1;
    return place;
  }
  const folder = await privateFolder(store);
  try {
    await make(folder);
    await store.sound?.();
    await mkdir(dirname(place), { recursive: true });
    await rename(folder, place).catch(async (error: NodeJS.ErrnoException) => {
      // Another build finished the same result first: same key, same bytes.
      if (!(await exists(place))) throw error;
    });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
  if (tally) tally.made += 1;
  return place;
}

/** The JSON value kept under `kind/key.json`; made where it is not there or cannot be read. */
export async function keepJson<T>(
  store: Store,
  kind: string,
  key: string,
  parse: (value: unknown) => T,
  make: () => Promise<T>,
  tally?: StoreTally,
): Promise<T> {
  const place = join(store.root, kind, `${key}.json`);
  const kept = await readJson(place, parse);
  if (kept.ok) {
    if (tally) tally.found += 1;
    return kept.value;
  }
  const value = await make();
  await store.sound?.();
  await writeWhole(store, place, `${JSON.stringify(value)}\n`);
  if (tally) tally.made += 1;
  return value;
}

/** Write a file so that readers see the old or the new one, never a part. */
export async function writeWhole(store: Store, place: string, text: string): Promise<void> {
  await mkdir(store.scratch, { recursive: true });
  const draft = join(store.scratch, `${process.pid}-${randomUUID()}.part`);
  try {
    const handle = await open(draft, 'w');
    try {
      await handle.writeFile(text);
      // A rename can reach the disk before the bytes do; after a power cut the file would be empty.
      await handle.sync();
    } finally {
      await handle.close();
    }
    await mkdir(dirname(place), { recursive: true });
    await rename(draft, place);
  } finally {
    await rm(draft, { force: true });
  }
}

/** A JSON file through `parse`; missing, unreadable and refused are all "not there". */
export async function readJson<T>(
  place: string,
  parse: (value: unknown) => T,
): Promise<{ ok: true; value: T } | { ok: false }> {
  try {
    return { ok: true, value: parse(JSON.parse(await readFile(place, 'utf8'))) };
  } catch {
    return { ok: false };
  }
}

export async function exists(place: string): Promise<boolean> {
  return stat(place).then(
    () => true,
    () => false,
  );
}

/** Remove what builds that died left unfinished. Call while holding the lock. */
export async function clearScratch(store: Store): Promise<void> {
  await rm(store.scratch, { recursive: true, force: true });
  await mkdir(store.scratch, { recursive: true });
}

/** Mark a kept result as used now, so that a later clean-up can tell what is old. */
export async function touch(place: string, when: Date): Promise<void> {
  await utimes(place, when, when);
}
