/**
 * A collection of many plates for measuring pages alone: every plate has the same two captures,
 * by hard links, and differs in number, date, place and condition. Stages do their work once.
 */
import { link, mkdir, mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { conditionTerms } from '../../../src/records/vocabulary.ts';
import { writeSmallContent } from '../../../tests/pipeline/small-content.ts';

/**
 * The folder of it all; `content/` is the content folder.
 *
 * @param home Folder to make it in.
 */
export async function manyPlates(count: number, home = tmpdir()): Promise<string> {
  const folder = await mkdtemp(join(home, 'mirrorleaf-many-'));
  const one = join(folder, 'one');
  await writeSmallContent(one);
  const content = join(folder, 'content');
  const first = join(one, 'plates', 'first');
  const words = await readFile(join(first, 'plate.md'), 'utf8');
  const sitting = await readFile(join(first, 'sitting.yaml'), 'utf8');
  await mkdir(join(content, 'plates'), { recursive: true });
  await writeFile(
    join(content, 'collection.md'),
    await readFile(join(one, 'collection.md'), 'utf8'),
  );
  for (let k = 1; k <= count; k += 1) {
    const plate = join(content, 'plates', `plate-${String(k).padStart(4, '0')}`);
    await mkdir(join(plate, 'captures'), { recursive: true });
    for (const name of ['normal.tif', 'axial.png']) {
      await link(join(first, 'captures', name), join(plate, 'captures', name));
    }
    const term = conditionTerms[k % conditionTerms.length];
    const own = `objectNumber: N ${k}\nplace: Place ${k % 40}\ncondition: [{ term: ${term} }]\ndate: '${1840 + (k % 30)}'`;
    await writeFile(join(plate, 'plate.md'), words.replace("date: '1850'", own));
    await writeFile(join(plate, 'sitting.yaml'), sitting);
  }
  return folder;
}
