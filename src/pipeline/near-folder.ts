/**
 * A folder that another program fills by renaming files into it from the project's own: that
 * works on one disk alone. Where the folder lies on another one, such as a network folder or a
 * mounted disk, it is filled beside the project and then copied.
 */
import { randomUUID } from 'node:crypto';
import { cp, mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Made } from './finished-folder.ts';

/**
 * Runs `make` with the folder to fill: `place` itself, or one below `near` that is copied there.
 * One at a time for each `near`: hold a lock.
 * @param near The folder that files are renamed from.
 */
export async function nearFolder(
  place: string,
  near: string,
  make: (folder: string) => Promise<Made>,
): Promise<Made> {
  await mkdir(near, { recursive: true });
  await mkdir(dirname(place), { recursive: true });
  if (await reaches(near, dirname(place))) return make(place);
  const folder = join(near, 'being-made');
  await rm(folder, { recursive: true, force: true });
  try {
    const made = await make(folder);
    if (made !== false) await cp(folder, place, { recursive: true });
    return made;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Tried, not read off the numbers of the devices: two mounts of one device do not reach either. */
async function reaches(from: string, to: string): Promise<boolean> {
  const name = `reaches-${randomUUID()}`;
  const [here, there] = [join(from, name), join(to, name)];
  await writeFile(here, '');
  try {
    await rename(here, there);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EXDEV') return false;
    throw error;
  } finally {
    await rm(here, { force: true });
    await rm(there, { force: true });
  }
}
