/**
 * A digest of what every page depends on: the program, what the lock file says, where the
 * exhibit lies, and all of the content folder that is not a plate.
 */
import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { exhibitBase } from './places.ts';

const project = join(import.meta.dirname, '..', '..');

export async function sharedInputs(content: string): Promise<string> {
  const hash = createHash('sha256').update(exhibitBase());
  for (const name of ['astro.config.mjs', 'package.json', 'package-lock.json']) {
    hash.update(await readFile(join(project, name)));
  }
  const roots = [join(project, 'src')];
  for (const entry of await readdir(content, { withFileTypes: true })) {
    if (entry.isDirectory() && entry.name !== 'plates') roots.push(join(content, entry.name));
    else if (entry.isFile())
      hash.update(entry.name).update(await readFile(join(content, entry.name)));
  }
  for (const root of roots.sort()) {
    const entries = await readdir(root, { recursive: true, withFileTypes: true });
    const files = entries.filter((entry) => entry.isFile());
    for (const path of files.map((entry) => join(entry.parentPath, entry.name)).sort()) {
      hash.update(path.slice(root.length)).update(await readFile(path));
    }
  }
  return hash.digest('hex');
}
