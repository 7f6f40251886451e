/**
 * What the pages read: the words that a museum writes (`content/`) and what the stages found out
 * (`record.json` of each plate), joined by slug in `src/components/exhibit.ts`.
 *
 * Two collections and not one, because Astro's loader knows a changed file only by the file it
 * globs: a plate whose results change must not keep its old page.
 */
import { defineCollection } from 'astro:content';
import { glob, type Loader } from 'astro/loaders';
import { pathToFileURL } from 'node:url';
import { z } from 'zod';
import { readContent, type ContentPage } from './pipeline/content.ts';
import { findPlaces } from './pipeline/places.ts';
import { readResults } from './pipeline/results.ts';
import { collectionSchema } from './records/collection.ts';
import {
  collectionOverlaySchema,
  pageOverlaySchema,
  plateOverlaySchema,
} from './records/overlay.ts';
import { pageSchema } from './records/page.ts';
import { plateSchema } from './records/plate.ts';
import { resultSchema } from './records/result.ts';
import { sittingSchema } from './records/sitting.ts';

const places = findPlaces();
const content = pathToFileURL(`${places.content}/`);
const results = pathToFileURL(`${places.records}/`);

/**
 * The files that our own check took: Astro stops the whole site at the first one it refuses,
 * and a museum's other plates must still be published.
 */
const sound = await readContent(places.content);
const published = new Set((await readResults(places)).map((result) => result.slug));
const plates = sound.plates.filter(({ slug }) => published.has(slug));
const pageFiles = (kind: ContentPage['kind']) =>
  sound.pages.filter((page) => page.kind === kind).map((page) => page.file);

const textFiles = (isOne: (plate: string, original: string) => boolean) =>
  sound.overlays
    .filter(({ plate, original }) => isOne(plate, original))
    .map(({ plate, file }) => (plate === '' ? file : `plates/${plate}/${file}`));

/** Most museums have no translations of some kind: nothing to look for is nothing to warn of. */
function texts(files: {
  pattern: string[];
  generateId: (of: { entry: string }) => string;
}): Loader {
  const found = glob({ base: content, ...files });
  if (files.pattern.length > 0) return found;
  return { name: found.name, load: ({ store }) => Promise.resolve(store.clear()) };
}

/** YAML reads `2026-03-02` as a moment; the records mean the day. */
function plainDates(value: unknown): unknown {
  if (value instanceof Date) return value.toISOString().slice(0, 10);
  if (Array.isArray(value)) return value.map(plainDates);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, plainDates(part)]));
}

/** `plates/<slug>/plate.md` to `<slug>`. */
const plateSlug = ({ entry }: { entry: string }) => entry.split('/')[1];

/** `techniques/raking.md` to `raking`. */
const fileName = ({ entry }: { entry: string }) => entry.replace(/^.*\/|\.\w+$/g, '');

/** `plates/basin/plate.fr.md` to `fr`. */
const fileLanguage = (entry: string) => entry.split('.').at(-2)!;

/** `techniques/raking.fr.md` to `techniques/raking/fr`, `glossary.fr.md` to `pages/glossary/fr`. */
const pageText = ({ entry }: { entry: string }) =>
  (entry.includes('/') ? entry : `pages/${entry}`).replace(/\.([^.]+)\.md$/, '/$1');

export const collections = {
  collection: defineCollection({
    loader: glob({ base: content, pattern: 'collection.md' }),
    schema: z.preprocess(plainDates, collectionSchema),
  }),
  plates: defineCollection({
    loader: glob({
      base: content,
      pattern: plates.map(({ slug }) => `plates/${slug}/plate.md`),
      generateId: plateSlug,
    }),
    schema: z.preprocess(plainDates, plateSchema),
  }),
  plateTexts: defineCollection({
    loader: texts({
      pattern: textFiles((plate) => published.has(plate)),
      generateId: ({ entry }) => `${plateSlug({ entry })}/${fileLanguage(entry)}`,
    }),
    schema: z.preprocess(plainDates, plateOverlaySchema),
  }),
  collectionTexts: defineCollection({
    loader: texts({
      pattern: textFiles((_, original) => original === 'collection.md'),
      generateId: ({ entry }) => fileLanguage(entry),
    }),
    schema: z.preprocess(plainDates, collectionOverlaySchema),
  }),
  pageTexts: defineCollection({
    loader: texts({
      pattern: textFiles((plate, original) => plate === '' && original !== 'collection.md'),
      generateId: pageText,
    }),
    schema: z.preprocess(plainDates, pageOverlaySchema),
  }),
  sittings: defineCollection({
    loader: glob({
      base: content,
      pattern: plates.flatMap(({ slug, sittings }) =>
        sittings.map((sitting) => `plates/${slug}/${sitting.file}`),
      ),
      generateId: ({ entry }) => `${plateSlug({ entry })}/${fileName({ entry })}`,
    }),
    schema: z.preprocess(plainDates, sittingSchema),
  }),
  records: defineCollection({
    loader: glob({
      base: results,
      pattern: plates.map(({ slug }) => `${slug}/record.json`),
      generateId: ({ entry }) => entry.split('/')[0],
    }),
    schema: resultSchema,
  }),
  techniques: defineCollection({
    loader: glob({ base: content, pattern: pageFiles('technique'), generateId: fileName }),
    schema: z.preprocess(plainDates, pageSchema),
  }),
  lessons: defineCollection({
    loader: glob({ base: content, pattern: pageFiles('lesson'), generateId: fileName }),
    schema: z.preprocess(plainDates, pageSchema),
  }),
  pages: defineCollection({
    loader: glob({ base: content, pattern: pageFiles('page') }),
    schema: z.preprocess(plainDates, pageSchema),
  }),
};
