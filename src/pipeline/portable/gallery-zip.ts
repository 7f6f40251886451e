/** The archive of an exhibit that has been built, or the sentence that says why there is none. */
import { realpath, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { readCollection } from '../content/read-collection.ts';
import { exhibitBase, type Places } from '../places.ts';
import { writeZip } from './write-zip.ts';

/** 0 when the archive stands, 1 where it could not be made. */
export async function writeGalleryZip(
  places: Places,
  file: string,
  quiet: boolean,
): Promise<number> {
  if (!(await stat(join(places.out, 'index.html')).catch(() => null))) {
    console.error(
      `There is no exhibit in ${places.out} to put into ${file}: the pages were not made.`,
    );
    return 1;
  }
  const { collection } = await readCollection(places.content, await realpath(places.content));
  const title = collection?.title ?? 'Exhibit';
  try {
    const count = await writeZip({ exhibit: places.out, base: exhibitBase(), file, title });
    const megabytes = Math.ceil((await stat(file)).size / 1e6);
    if (!quiet) console.error(`Archive: ${count} files, ${megabytes} MB, in ${file}`);
    return 0;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    console.error(`${file} could not be written (${code}). Name another place with --zip.`);
    return 1;
  }
}
