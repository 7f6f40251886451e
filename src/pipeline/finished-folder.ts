/**
 * A folder that is there whole or not at all: made under another name beside its place, and put
 * there when it is finished. What stood there before stays until then, also when the making
 * fails or is killed. Leftovers of a killed making go with the next one.
 */
import { cp, mkdir, readdir, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** Ends the name of a folder that is being made. */
const making = '.being-made';
/** Ends the name of what it takes the place of. */
const former = '.former';

/**
 * Runs `make` with the folder to fill and puts that at `place` where it returns true. One at a
 * time for each place: hold a lock.
 */
export async function finishedFolder(
  place: string,
  make: (folder: string) => Promise<boolean>,
): Promise<boolean> {
  const folder = `${place}${making}`;
  await mkdir(dirname(place), { recursive: true });
  await rm(folder, { recursive: true, force: true });
  await rm(`${place}${former}`, { recursive: true, force: true });
  const made = await make(folder);
  if (made) await putThere(folder, place);
  await rm(folder, { recursive: true, force: true });
  return made;
}

async function putThere(folder: string, place: string): Promise<void> {
  try {
    await rename(place, `${place}${former}`);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EBUSY' || code === 'EXDEV' || code === 'EACCES' || code === 'EPERM') {
      await fill(folder, place);
      return;
    }
    if (code !== 'ENOENT') throw error;
  }
  await rename(folder, place);
  await rm(`${place}${former}`, { recursive: true, force: true });
}

/** For a place that cannot be renamed, such as a mounted disk: copied, one entry after another. */
async function fill(folder: string, place: string): Promise<void> {
  const entries = await readdir(folder);
  for (const name of await readdir(place)) {
    if (!entries.includes(name)) await rm(join(place, name), { recursive: true, force: true });
  }
  for (const name of entries) {
    await rm(join(place, name), { recursive: true, force: true });
    await cp(join(folder, name), join(place, name), { recursive: true });
  }
}
