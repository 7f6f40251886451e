/** What a finished folder holds beside pages: pictures, the index of words, files for hosts. */
import type { Places } from '../pipeline/places.ts';
import { tellComing } from '../pipeline/standing.ts';
import { linkPreviews } from './link-previews.ts';
import { linkTiles } from './link-tiles.ts';
import { plateFolders, type PagesToMake } from './pages-to-make.ts';
import type { Address } from './service-info.ts';
import { writeHostFiles } from './write-host-files.ts';
import { writeLicences } from './write-licences.ts';
import type { WordIndex } from './word-index.ts';

/** The number of tiles put in place. */
export async function furnish(
  places: Places,
  making: PagesToMake,
  out: string,
  address: Address,
  words: WordIndex,
): Promise<number> {
  const { content, plates, made, keys, cells } = making;
  const results = made.map(({ result }) => result);
  // Side by side: the words are counted by a process of their own, which is waited for.
  const [parts, count] = await Promise.all([
    words.finish(),
    linkTiles(places, results, out, address),
    linkPreviews(places, content, made, out),
  ]);
  await writeLicences(out);
  await writeHostFiles(content, new Set(plates.map(({ slug }) => slug)), out, address.base);
  const slugs = new Set(made.map(({ slug }) => slug));
  const languages = content.collection?.languages ?? [];
  const staying = [
    ...plates
      .filter(({ slug }) => !slugs.has(slug))
      .flatMap(({ slug }) => plateFolders(slug, languages)),
    ...parts.filter(({ stays }) => stays).map(({ path }) => path),
  ];
  const all = [...keys, ...parts.map(({ path, key }): [string, string] => [path, key])];
  await cells.save();
  await tellComing(places, { keys: Object.fromEntries(all), staying });
  return count;
}
