/**
 * The exhibit as one archive for a gallery's computer: its pages made so that they can be opened
 * from the folder, a tiny server for what a browser refuses there, and a note that says which is
 * which. The same exhibit gives the same bytes.
 */
import { createWriteStream } from 'node:fs';
import { mkdir, readdir, readFile, rename, rm } from 'node:fs/promises';
import { dirname, extname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { ZipFile } from 'yazl';
import { folderNotice, servedCss } from '../../publish/portable/notice.ts';
import { relativePage, servedStyle } from '../../publish/portable/relative-page.ts';
import { readMe } from './read-me.ts';

/** The first moment that the format knows; the day of a build is not part of an exhibit. */
const noDay = new Date(1980, 0, 1);
/** Packed already. */
const dense = new Set(['.webp', '.jpg', '.png', '.woff2', '.wasm', '.zip', '.pdf']);

export interface ZipWish {
  /** The finished folder. */
  readonly exhibit: string;
  /** Path of the exhibit on its host, with both slashes. */
  readonly base: string;
  /** Where the archive goes; replaced when it is whole. */
  readonly file: string;
  readonly title: string;
}

/** Writes the archive; gives the number of files in it. */
export async function writeZip({ exhibit, base, file, title }: ZipWish): Promise<number> {
  await mkdir(dirname(file), { recursive: true });
  const names = await filesOf(exhibit);
  const part = `${file}.part`;
  const zip = new ZipFile();
  const options = { mtime: noDay, mode: 0o644 };
  const text = (name: string, words: string) => {
    zip.addBuffer(Buffer.from(words), name, { ...options, compress: true });
  };
  const server = await readFile(join(import.meta.dirname, 'serve.mjs'), 'utf8');
  text('READ-ME.txt', readMe(title, base));
  text('serve.mjs', server.replace('/*BASE*/', base));
  text(`exhibit/${servedStyle}`, servedCss);
  const written = pipeline(zip.outputStream, createWriteStream(part));
  try {
    for (const name of names) {
      const path = join(exhibit, name);
      const inside = `exhibit/${name}`;
      if (extname(name) === '.html') {
        const html = await readFile(path, 'utf8');
        text(inside, relativePage(html, { file: name, base, notice: folderNotice }));
      } else {
        zip.addFile(path, inside, { ...options, compress: !dense.has(extname(name)) });
      }
    }
    zip.end();
    await written;
    await rename(part, file);
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
  return names.length + 3;
}

/** Every file below a folder, by its path with slashes, sorted; hosts' own files left out. */
async function filesOf(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile() && !/^(_headers|_redirects|\.htaccess)$/.test(entry.name))
    .map(({ parentPath, name }) => join(parentPath, name).slice(folder.length + 1))
    .map((path) => path.replaceAll('\\', '/'))
    .sort();
}
