/** Path and SHA-256 of every file below a folder, for tests that compare bytes; none where there is no folder. */
import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';

export async function folderDigests(root: string): Promise<Record<string, string>> {
  const entries = await readdir(root, { recursive: true, withFileTypes: true }).catch(() => []);
  const paths = entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
  const found: Record<string, string> = {};
  for (const path of paths) {
    found[path.slice(root.length)] = createHash('sha256')
      .update(await readFile(path))
      .digest('hex');
  }
  return found;
}
