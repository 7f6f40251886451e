/** The photographs in a folder, with what the camera wrote; and what is left, with the reason. */
import { readdir, stat } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { readExif } from '../../raster/camera-exif.ts';
import { asFailure } from '../../raster/capture-fault.ts';
import { defaultPixelLimit, readHead } from '../../raster/capture-head.ts';
import { captureFile } from '../../records/fields.ts';
import type { FoundFile } from './group-files.ts';

export interface LeftFile {
  readonly name: string;
  readonly reason: string;
}

export interface Pictures {
  readonly files: readonly FoundFile[];
  readonly left: readonly LeftFile[];
}

/** Numbers in names by their value, as a person sorts: `frame-9` before `frame-10`. */
const byName = new Intl.Collator('en', { numeric: true });

/** Look at every file of a folder and of the folders in it. */
export async function findPictures(folder: string): Promise<Pictures> {
  const files: FoundFile[] = [];
  const left: LeftFile[] = [];
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const names = entries
    .filter((entry) => !entry.isDirectory())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .filter((name) => !/(^|\/)(\.|Thumbs\.db$|desktop\.ini$)/i.test(name))
    .sort((a, b) => byName.compare(a, b) || (a < b ? -1 : 1));
  for (const name of names) {
    const found = await lookAt(folder, name);
    if ('reason' in found) left.push(found);
    else files.push(found);
  }
  return { files, left };
}

async function lookAt(folder: string, name: string): Promise<FoundFile | LeftFile> {
  const path = join(folder, name);
  if (!captureFile.safeParse(name).success) {
    return { name, reason: 'Its name has a character that other computers cannot hold.' };
  }
  try {
    // A named pipe would never end; a folder behind a link is not a photograph.
    if (!(await stat(path)).isFile()) return { name, reason: 'It is not a file.' };
    const picture = await readHead(path, defaultPixelLimit);
    const { width, height } = picture;
    return { name, width, height, exif: await readExif(picture) };
  } catch (error) {
    return { name, reason: whyNot(error) };
  }
}

function whyNot(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  if (typeof code === 'string' && /^E[A-Z]+$/.test(code)) return `It cannot be read (${code}).`;
  try {
    return asFailure(error).message;
  } catch {
    return message;
  }
}
