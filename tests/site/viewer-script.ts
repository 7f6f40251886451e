/** How much script the viewer is: every file that its first one leads to, without the deep zoom library. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

const library = join(
  ...[import.meta.dirname, '..', '..', 'node_modules/openseadragon/build/openseadragon'],
  'openseadragon.min.js',
);

const compressed = (path: string) => gzipSync(readFileSync(path)).length;

/** Chunks of `src/words/<language>/viewer.ts`: a page loads that of its own language alone. */
const isWords = (name: string) => name.startsWith('viewer.');

/**
 * @param folder Of the built exhibit.
 * @returns Bytes, compressed, in the language with the longest words, and the files of all.
 */
export function viewerScript(folder: string): {
  readonly bytes: number;
  readonly files: readonly string[];
} {
  const assets = join(folder, 'assets');
  const first = readdirSync(assets).filter((name) => /^PlateStage.*\.js$/.test(name));
  const files = new Set(first);
  // Whether imported at once or when first used.
  for (const name of files)
    for (const [, next] of readFileSync(join(assets, name), 'utf8').matchAll(
      /["'`]\.\/([\w.-]+\.js)["'`]/g,
    ))
      files.add(next);
  const sizes = [...files].map((name) => ({ name, size: compressed(join(assets, name)) }));
  const words = Math.max(0, ...sizes.filter(({ name }) => isWords(name)).map(({ size }) => size));
  const program = sizes
    .filter(({ name }) => !isWords(name))
    .reduce((sum, { size }) => sum + size, 0);
  return { bytes: program + words - compressed(library), files: [...files] };
}
