/** Every file below a folder, for tests that compare or search all bytes. */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';

/** Path within the folder, beginning with a slash, and bytes; sorted; none where there is no folder. */
export async function folderFiles(root: string): Promise<[path: string, bytes: Buffer][]> {
  const entries = await readdir(root, { recursive: true, withFileTypes: true }).catch(() => []);
  const paths = entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
  return Promise.all(
    paths.map(async (path): Promise<[string, Buffer]> => {
      return [path.slice(root.length), await readFile(path)];
    }),
  );
}
