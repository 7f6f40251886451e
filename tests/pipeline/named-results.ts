/** What of a cache folder has a name and must therefore be whole: path and SHA-256 of each file. */
import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join, relative } from 'node:path';

/**
 * Unfinished work, what is remembered of files (with their times), Astro's own store and the
 * exhibit, which is looked at by itself.
 */
const apart =
  /^(scratch|readings|pages|exhibit(\.being-made|\.former)?)(\/|$)|^lock|^file-digests\.json$/;

export type Digests = Readonly<Record<string, string>>;

/** One file after another: the demonstration's results do not fit into memory at once. */
export async function digestsBelow(root: string, leftOut = /^$/): Promise<Digests> {
  const entries = await readdir(root, { recursive: true, withFileTypes: true }).catch(() => []);
  const found: Record<string, string> = {};
  for (const entry of entries) {
    const path = relative(root, join(entry.parentPath, entry.name));
    if (!entry.isFile() || leftOut.test(path)) continue;
    const bytes = await readFile(join(root, path));
    found[path] = createHash('sha256').update(bytes).digest('hex');
  }
  return found;
}

export const namedResults = (cache: string): Promise<Digests> => digestsBelow(cache, apart);

/** Files of `found` that `expected` has not, or has otherwise. */
export const strangers = (found: Digests, expected: Digests): string[] =>
  Object.keys(found).filter((path) => found[path] !== expected[path]);

/** Files that only one has, or that differ. */
export const differences = (one: Digests, other: Digests): string[] => [
  ...new Set([...strangers(one, other), ...strangers(other, one)]),
];
