/**
 * Whether files are still what they were when a plate was begun. Stages read a capture more than
 * once, and what they find is kept under the digest of the first reading: a file that is copied
 * over in between would leave another one's pixels under its name.
 */
import { stat } from 'node:fs/promises';

/** A file was changed or taken away while a plate was worked on. */
export class FileChanged extends Error {
  readonly code = 'changed-while-read';
}

/**
 * @param files Path of each file by the name to say.
 * @returns Asks again. @throws FileChanged, then, when a file has changed or is gone.
 */
export async function watchFiles(files: ReadonlyMap<string, string>): Promise<() => Promise<void>> {
  const look = async (path: string) => {
    const found = await stat(path).catch(() => null);
    return found && [found.size, found.mtimeMs, found.ctimeMs, found.ino].join(' ');
  };
  const before = new Map<string, string | null>();
  for (const [name, path] of files) before.set(name, await look(path));
  return async () => {
    for (const [name, path] of files) {
      const now = await look(path);
      if (now === before.get(name)) continue;
      throw new FileChanged(
        now === null
          ? `${name} was there when the plate was begun, and is gone`
          : `${name} changed while the plate was being worked on`,
      );
    }
  };
}
