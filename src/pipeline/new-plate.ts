/**
 * A new plate from a folder of photographs: captures copied, the sitting filled in as far as the
 * camera and the names allow, the record with marks where a person must write. Nothing is
 * overwritten, nothing in the source folder is touched, and the plate's folder appears whole.
 */
import { randomBytes } from 'node:crypto';
import { lstat, mkdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, join, resolve } from 'node:path';
import { slug as slugSchema } from '../records/fields.ts';
import type { Finding } from '../records/finding.ts';
import { readContent } from './content.ts';
import { copyCaptures } from './new-plate/copy-captures.ts';
import { findPictures, type LeftFile } from './new-plate/find-pictures.ts';
import { groupFiles, type CaptureGuess } from './new-plate/group-files.ts';
import { processIn } from './new-plate/name-words.ts';
import { collectionText, plateText } from './new-plate/plate-text.ts';
import { sittingText } from './new-plate/sitting-text.ts';
import { WrongUse } from './wrong-use.ts';

export interface NewPlateOptions {
  readonly slug: string;
  /** Folder of photographs. */
  readonly from: string;
  readonly content: string;
  /** Told how many of the files are copied. */
  readonly progress?: (done: number, total: number) => void;
}

export interface NewPlate {
  readonly folder: string;
  readonly captures: readonly CaptureGuess[];
  /** Files that were not copied, with the reason. */
  readonly left: readonly LeftFile[];
  /** Whether a collection.md was written too. */
  readonly madeCollection: boolean;
  /** What the content folder's own check says about the new plate and the collection. */
  readonly findings: readonly Finding[];
}

/**
 * Make the plate.
 *
 * @throws WrongUse when the name, the folder or the place cannot be used.
 */
export async function newPlate(options: NewPlateOptions): Promise<NewPlate> {
  const { slug, content } = options;
  const from = resolve(options.from);
  const plates = join(content, 'plates');
  const folder = join(plates, slug);
  await checkUse(slug, from, folder);
  const { files, left } = await findPictures(from);
  if (files.length === 0) {
    const why = left.slice(0, 3).map(({ name, reason }) => `\n  ${name}: ${reason}`);
    throw new WrongUse(
      `There is no photograph in ${from}. Expected TIFF, JPEG, PNG or WebP files.${why.join('')}`,
    );
  }
  const captures = groupFiles(files);
  const process = processIn([basename(from), ...files.map(({ name }) => name)]);
  await mkdir(plates, { recursive: true });
  // In the same folder, so that it can be renamed; with a dot, so that no build takes it for a plate.
  const draft = join(plates, `.new-${slug}-${randomBytes(6).toString('hex')}`);
  try {
    await mkdir(draft);
    const names = files.map(({ name }) => name);
    await copyCaptures(from, join(draft, 'captures'), names, (done) => {
      options.progress?.(done, names.length);
    });
    await writeFile(join(draft, 'sitting.yaml'), sittingText(captures));
    await writeFile(join(draft, 'plate.md'), plateText(slug, process));
    await checkFree(folder, slug);
    await rename(draft, folder);
  } catch (error) {
    await rm(draft, { recursive: true, force: true });
    throw error;
  }
  const madeCollection = await writeCollection(content);
  const read = await readContent(content);
  const own = read.plates.find((plate) => plate.slug === slug)?.findings ?? [];
  return { folder, captures, left, madeCollection, findings: [...read.findings, ...own] };
}

async function checkUse(slug: string, from: string, folder: string): Promise<void> {
  if (!slugSchema.safeParse(slug).success) {
    throw new WrongUse(
      `"${slug}" cannot be the name of a plate. Use lower-case letters, digits and single hyphens, such as "harbour" or "fq-1911-14".`,
    );
  }
  const stats = await stat(from).catch(() => null);
  if (!stats?.isDirectory()) throw new WrongUse(`There is no folder ${from}.`);
  await checkFree(folder, slug);
}

async function checkFree(folder: string, slug: string): Promise<void> {
  const there = await lstat(folder).catch(() => null);
  if (there) {
    throw new WrongUse(
      `The plate "${slug}" is there already (${folder}). Nothing was changed; choose another name.`,
    );
  }
}

/** Write a first collection.md where there is none; true when it was written. */
async function writeCollection(content: string): Promise<boolean> {
  try {
    await writeFile(join(content, 'collection.md'), collectionText(), { flag: 'wx' });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}
