/**
 * What stands in the finished folder: the key of the pages of each plate, and the folders that a
 * later build may leave as they are. Known only while nothing disturbs it: forgotten before the
 * folder is changed, and written again afterwards.
 */
import { readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { Places } from './places.ts';
import { readJson, writeWhole, type Store } from './store.ts';

const comingSchema = z.strictObject({
  /** By the path of a folder within the exhibit: the key of what is in it. */
  keys: z.record(z.string(), z.string()),
  /** Those of them that the build left out, since they stand already. */
  staying: z.array(z.string()),
});
export type Coming = z.output<typeof comingSchema>;

const standingSchema = z.strictObject({
  folder: z.string(),
  /** Which folder it is: another of the same name is not ours. */
  inode: z.number(),
  keys: comingSchema.shape.keys,
});

const standingFile = (places: Places) => join(places.pages, 'standing.json');
/** What the pages that are being made tell of themselves. */
const comingFile = (places: Places) => join(places.pages, 'coming.json');
const storeOf = (places: Places): Store => ({ root: places.cache, scratch: places.scratch });

const inodeOf = (folder: string): Promise<number | null> =>
  stat(folder).then(
    ({ ino }) => ino,
    () => null,
  );

/**
 * Keys of the folders that stand in the exhibit; none where that is not the one written last.
 *
 * @param folder Where the exhibit stands.
 */
export async function readStanding(
  places: Places,
  folder: string,
): Promise<ReadonlyMap<string, string>> {
  const found = await readJson(standingFile(places), (value) => standingSchema.parse(value));
  if (!found.ok || found.value.folder !== folder) return new Map();
  if (found.value.inode !== (await inodeOf(folder))) return new Map();
  const listed = new Map<string, ReadonlySet<string>>();
  const keys = Object.entries(found.value.keys);
  for (const above of new Set(keys.map(([path]) => path.slice(0, path.lastIndexOf('/'))))) {
    listed.set(above, new Set(await readdir(join(folder, above)).catch(() => [])));
  }
  const isThere = (path: string) => {
    const at = path.lastIndexOf('/');
    return listed.get(path.slice(0, at))?.has(path.slice(at + 1)) === true;
  };
  return new Map(keys.filter(([path]) => isThere(path)));
}

export async function forgetStanding(places: Places): Promise<void> {
  await rm(standingFile(places), { force: true });
}

/** Said by the pages' own process when they are made. */
export async function tellComing(places: Places, coming: Coming): Promise<void> {
  await writeWhole(storeOf(places), comingFile(places), JSON.stringify(coming));
}

const readComing = async (places: Places): Promise<Coming> => {
  const found = await readJson(comingFile(places), (value) => comingSchema.parse(value));
  if (!found.ok) throw new Error('The pages were made, but what was made of them is not known.');
  return found.value;
};

/** The folders that the pages just made leave as they are; true where they are all of it. */
export async function staying(places: Places): Promise<true | readonly string[]> {
  const coming = await readComing(places);
  return coming.staying.length === 0 ? true : coming.staying;
}

/** The pages that were made have been put in their place. */
export async function comeToStand(places: Places): Promise<void> {
  const { keys } = await readComing(places);
  const inode = await inodeOf(places.out);
  const text = JSON.stringify({ folder: places.out, inode, keys });
  await writeWhole(storeOf(places), standingFile(places), text);
  await rm(comingFile(places), { force: true });
}
