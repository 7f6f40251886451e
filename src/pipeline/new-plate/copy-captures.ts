/** Photographs copied, compared byte by byte with what they were copied from; never moved. */
import { createHash } from 'node:crypto';
import { constants, createReadStream } from 'node:fs';
import { copyFile, mkdir, stat, utimes } from 'node:fs/promises';
import { dirname, join } from 'node:path';

async function digest(path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path)) hash.update(chunk as Buffer);
  return hash.digest('hex');
}

/** Copy each file under its own name, with its time. Throws when a copy differs. */
export async function copyCaptures(
  from: string,
  to: string,
  names: readonly string[],
  progress: (done: number) => void,
): Promise<void> {
  await mkdir(to, { recursive: true });
  for (const [k, name] of names.entries()) {
    const [source, target] = [join(from, name), join(to, name)];
    await mkdir(dirname(target), { recursive: true });
    // COPYFILE_FICLONE shares the blocks where the file system can, and copies elsewhere.
    await copyFile(source, target, constants.COPYFILE_EXCL | constants.COPYFILE_FICLONE);
    if ((await digest(source)) !== (await digest(target))) {
      throw new Error(`The copy of ${name} is not the same as the file. Check both disks.`);
    }
    const { atime, mtime } = await stat(source);
    await utimes(target, atime, mtime);
    progress(k + 1);
  }
}
