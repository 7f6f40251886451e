/**
 * Licences of what is handed on with an exhibit: fonts (SIL Open Font License, which must go with
 * them), the library of the viewer and the search (their notices likewise). What only makes the
 * exhibit is not in it.
 */
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

const packages = join(import.meta.dirname, '..', '..', 'node_modules');

/** Packages whose files, or parts of them, end in `dist`. */
export const handedOn = [
  '@fontsource-variable/instrument-sans',
  '@fontsource-variable/newsreader',
  'openseadragon',
  'pagefind',
] as const;

/** One after another, each under the name and version of its package. */
export async function licenceText(): Promise<string> {
  const parts: string[] = [];
  for (const name of handedOn) {
    const folder = join(packages, name);
    const { version, license } = JSON.parse(
      await readFile(join(folder, 'package.json'), 'utf8'),
    ) as { version: string; license: string };
    const found = await readdir(folder, { recursive: true, withFileTypes: true });
    const files = found
      .filter((entry) => entry.isFile() && /^licen[cs]e/i.test(entry.name))
      .map((entry) => join(entry.parentPath, entry.name))
      .filter((path) => !path.slice(folder.length).includes('node_modules'))
      .sort();
    if (files.length === 0) throw new Error(`The package ${name} has no file with its licence.`);
    const texts = await Promise.all(files.map((path) => readFile(path, 'utf8')));
    parts.push(`${name} ${version} (${license})\n\n${texts.map((t) => t.trim()).join('\n\n')}\n`);
  }
  return parts.join(`\n${'-'.repeat(72)}\n\n`);
}

export async function writeLicences(exhibit: string): Promise<void> {
  await writeFile(join(exhibit, 'licences.txt'), await licenceText());
}
