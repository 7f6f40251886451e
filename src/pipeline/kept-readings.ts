/**
 * What has been read from small files, kept until the files change: ten thousand plates are
 * parsed once and not at every build. A file counts as unchanged while its size, times and inode
 * are the same; one that was written a moment ago is read again, since it could change again
 * without another time.
 *
 * Kept in some dozens of files, so that one changed plate does not mean writing all of them.
 */
import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Places } from './places.ts';
import { writeWhole, type Store } from './store.ts';

/** What kind of thing was read. */
export type ReadingKind = 'plate' | 'overlays' | 'result' | 'text' | 'alike' | 'key' | 'digest';

export interface KeptReadings {
  /**
   * What was read of `name` when its files had this print; else it is read now, and kept where it
   * is sound: a fault may be one of the disk, which the next build does not find.
   */
  of<T>(
    kind: ReadingKind,
    name: string,
    print: string | null,
    read: () => Promise<T>,
    isSound?: (value: T) => boolean,
  ): Promise<T>;
  /** The print under which a reading is kept: its files have not changed since; null where it is not. */
  printOf(kind: ReadingKind, name: string): string | null;
  /** Keep what was read for the next build, and forget what is no more. */
  save(): Promise<void>;
}

interface Entry {
  readonly print: string;
  readonly value: unknown;
}
type Shard = Map<string, Entry>;

const shardCount = 64;
const shardOf = (name: string) => createHash('sha256').update(name).digest()[0] % shardCount;
const project = join(import.meta.dirname, '..', '..');

/** Folders of what reads files of a content folder. */
const readers = ['src/records', 'src/pipeline/content', 'src/markdown'];

/** Changes with every program that could read the same file in another way. */
async function readersVersion(): Promise<string> {
  const hash = createHash('sha256');
  for (const folder of readers.map((name) => join(project, name))) {
    const entries = await readdir(folder, { recursive: true, withFileTypes: true });
    const files = entries.filter((entry) => entry.isFile());
    for (const path of files.map((entry) => join(entry.parentPath, entry.name)).sort()) {
      hash.update(path.slice(project.length)).update(await readFile(path));
    }
  }
  for (const file of ['src/pipeline/content.ts', 'package-lock.json']) {
    hash.update(await readFile(join(project, file)));
  }
  return hash.digest('hex');
}

export async function openReadings(places: Places): Promise<KeptReadings> {
  const version = await readersVersion();
  const folder = places.readings;
  const shards = readShards(folder, version);
  const changed = new Set<number>();
  const seen = new Map<ReadingKind, Set<string>>();

  async function of<T>(
    kind: ReadingKind,
    name: string,
    print: string | null,
    read: () => Promise<T>,
    isSound: (value: T) => boolean = () => true,
  ): Promise<T> {
    const key = `${kind} ${name}`;
    const at = shardOf(name);
    seen.set(kind, (seen.get(kind) ?? new Set()).add(key));
    const before = shards[at].get(key);
    if (before && before.print === print) return before.value as T;
    const value = await read();
    if (print !== null && isSound(value)) {
      shards[at].set(key, { print, value });
      changed.add(at);
    } else if (shards[at].delete(key)) changed.add(at);
    return value;
  }

  const printOf = (kind: ReadingKind, name: string): string | null =>
    shards[shardOf(name)].get(`${kind} ${name}`)?.print ?? null;

  async function save(): Promise<void> {
    for (const [at, shard] of shards.entries()) {
      for (const key of [...shard.keys()]) {
        const kind = key.slice(0, key.indexOf(' ')) as ReadingKind;
        const asked = seen.get(kind);
        if (asked === undefined || asked.has(key)) continue;
        shard.delete(key);
        changed.add(at);
      }
    }
    const store: Store = { root: places.cache, scratch: places.scratch };
    for (const at of changed) {
      const text = JSON.stringify({ version, entries: Object.fromEntries(shards[at]) });
      await writeWhole(store, shardFile(folder, at), `${text}\n`);
    }
    changed.clear();
  }

  return { of, printOf, save };
}

const shardFile = (folder: string, at: number) => join(folder, `${at}.json`);

/** Shards that were read before they were needed, with the print of their files. */
const ahead = new Map<string, { readonly print: string; readonly shard: Shard }>();

/**
 * Reads what is kept before it is needed, for the next time that it is opened. What another
 * process writes until then is read again.
 */
export async function readAhead(places: Places): Promise<void> {
  const version = await readersVersion();
  for (let at = 0; at < shardCount; at += 1) {
    const file = shardFile(places.readings, at);
    const print = shardPrint(file, version);
    if (print !== null) ahead.set(file, { print, shard: readShard(file, version) });
  }
}

function readShards(folder: string, version: string): Shard[] {
  return Array.from({ length: shardCount }, (_, at) => {
    const file = shardFile(folder, at);
    const before = ahead.get(file);
    ahead.delete(file);
    const isSame = before && before.print === shardPrint(file, version);
    return isSame ? before.shard : readShard(file, version);
  });
}

/** Of a file that is only ever replaced as a whole. */
function shardPrint(file: string, version: string): string | null {
  try {
    const { ino, mtimeMs, size } = statSync(file);
    return `${version}/${ino}/${mtimeMs}/${size}`;
  } catch {
    return null;
  }
}

/** Nothing where there is no such file, or one that another program wrote. */
function readShard(file: string, version: string): Shard {
  try {
    const found = JSON.parse(readFileSync(file, 'utf8')) as {
      version?: unknown;
      entries?: unknown;
    };
    if (found.version !== version) return new Map();
    return new Map(Object.entries(found.entries as Record<string, Entry>));
  } catch {
    return new Map();
  }
}
