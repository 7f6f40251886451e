/**
 * A folder that is there whole or not at all: made under another name beside its place, and put
 * there when it is finished. What stood there before stays until then, also when the making
 * fails or is killed. Leftovers of a killed making go with the next one.
 *
 * A making may leave out folders that are to stay as they are. Then what it made is moved in, one
 * entry after another, by a list that is written first: where that is cut off, the next making
 * begins by going through the rest of the list.
 */
import { cp, mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** Ends the name of a folder that is being made. */
const making = '.being-made';
/** Ends the name of what it takes the place of. */
const former = '.former';
/** Ends the name of the list of entries that are moved in. */
const changes = '.changes';

/** False where nothing was made; true: all of it; else the folders in the place that stay. */
export type Made = boolean | readonly string[];

/**
 * Runs `make` with the folder to fill and puts that at `place` where it was made. One at a time
 * for each place: hold a lock.
 *
 * @param before Called before the place is touched.
 */
export async function finishedFolder(
  place: string,
  make: (folder: string) => Promise<Made>,
  before?: () => Promise<void>,
): Promise<boolean> {
  const folder = `${place}${making}`;
  await mkdir(dirname(place), { recursive: true });
  await finishMoves(place);
  await rm(folder, { recursive: true, force: true });
  await rm(`${place}${former}`, { recursive: true, force: true });
  const made = await make(folder);
  if (made !== false) await before?.();
  if (made === true) await putThere(folder, place);
  else if (made !== false) await moveIn(folder, place, made);
  await rm(folder, { recursive: true, force: true });
  return made !== false;
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
  for (const name of entries) await replace(join(folder, name), join(place, name), null);
}

/** @param away Where what stood there goes; removed at once where null. */
async function replace(from: string, to: string, away: string | null): Promise<void> {
  if (away === null) await rm(to, { recursive: true, force: true });
  else await moveAway(to, away);
  try {
    await rename(from, to);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EXDEV') throw error;
    await cp(from, to, { recursive: true });
  }
}

async function moveAway(from: string, to: string): Promise<void> {
  await mkdir(dirname(to), { recursive: true });
  try {
    await rename(from, to);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return;
    // Moved away before the moving was cut off; or a disk of its own, which nothing leaves.
    if (code !== 'ENOTEMPTY' && code !== 'EEXIST' && code !== 'EXDEV') throw error;
    await rm(from, { recursive: true, force: true });
  }
}

interface Moves {
  /** Paths that come from the folder that was made. */
  readonly come: readonly string[];
  /** Paths that the place has no more. */
  readonly go: readonly string[];
}

async function moveIn(folder: string, place: string, kept: readonly string[]): Promise<void> {
  const moves = { come: [] as string[], go: [] as string[] };
  await compare(folder, place, '', keptOf(kept), moves);
  // What lies deepest first: a list of plates comes after the plates that it leads to.
  moves.come.sort((a, b) => b.split('/').length - a.split('/').length);
  const list = `${place}${changes}`;
  await writeFile(`${list}.part`, JSON.stringify(moves));
  await rename(`${list}.part`, list);
  await finishMoves(place);
}

/** The folders that stay, and those on the way to them. */
function keptOf(paths: readonly string[]) {
  const above = new Set<string>();
  for (const path of paths) {
    for (let at = path.lastIndexOf('/'); at > 0; at = path.lastIndexOf('/', at - 1)) {
      above.add(path.slice(0, at));
    }
  }
  return { paths: new Set(paths), above };
}

async function compare(
  folder: string,
  place: string,
  within: string,
  kept: ReturnType<typeof keptOf>,
  moves: { come: string[]; go: string[] },
): Promise<void> {
  const list = (root: string) => readdir(join(root, within)).catch(() => [] as string[]);
  const made = new Set(await list(folder));
  const there = new Set(await list(place));
  const path = (name: string) => (within === '' ? name : `${within}/${name}`);
  for (const name of [...new Set([...made, ...there])].map(path)) {
    const own = name.slice(within === '' ? 0 : within.length + 1);
    if (kept.paths.has(name)) continue;
    if (kept.above.has(name)) await compare(folder, place, name, kept, moves);
    else if (made.has(own)) moves.come.push(name);
    else moves.go.push(name);
  }
}

/** Go through the list of moves, from where it was left; nothing where there is none. */
async function finishMoves(place: string): Promise<void> {
  const list = `${place}${changes}`;
  const text = await readFile(list, 'utf8').catch(() => null);
  if (text === null) return;
  const { come, go } = JSON.parse(text) as Moves;
  const folder = `${place}${making}`;
  const away = `${place}${former}`;
  for (const name of come) {
    const from = join(folder, name);
    if (!(await stat(from).catch(() => null))) continue;
    await mkdir(dirname(join(place, name)), { recursive: true });
    await replace(from, join(place, name), join(away, name));
  }
  for (const name of go) await moveAway(join(place, name), join(away, name));
  await rm(list);
  await rm(away, { recursive: true, force: true });
}
