/** How much script the viewer is: every file that its first one leads to, without the deep zoom library. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

const library = join(
  ...[import.meta.dirname, '..', '..', 'node_modules/openseadragon/build/openseadragon'],
  'openseadragon.min.js',
);

const compressed = (path: string) => gzipSync(readFileSync(path)).length;

/** @param folder Of the built exhibit. @returns Bytes, compressed, and the files. */
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
  const all = [...files].reduce((sum, name) => sum + compressed(join(assets, name)), 0);
  return { bytes: all - compressed(library), files: [...files] };
}
