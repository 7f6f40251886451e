/**
 * The texts that Astro makes into pages. What the fields of plates, sittings and results say
 * reaches the pages another way (`src/publish/published-plates.ts`): of ten thousand plates a
 * build makes the pages of a few, and only their texts are needed here.
 */
import { defineCollection } from 'astro:content';
import { glob, type Loader } from 'astro/loaders';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { z } from 'zod';
import { handedContent } from './integration/handed-content.ts';
import { textLoader } from './integration/text-loader.ts';
import type { ContentPage } from './pipeline/content.ts';
import { findPlaces } from './pipeline/places.ts';
import { handedOver } from './publish/published-plates.ts';
import { collectionSchema } from './records/collection.ts';
import { collectionOverlaySchema, pageOverlaySchema } from './records/overlay.ts';
import { pageSchema } from './records/page.ts';

const places = findPlaces();
const content = pathToFileURL(`${places.content}/`);
const contentFile = (path: string) => join(places.content, path);

/**
 * The files that our own check took: Astro stops the whole site at the first one it refuses,
 * and a museum's other plates must still be published.
 */
const sound = handedContent();
const published = new Set((await handedOver().plates()).map(({ slug }) => slug));
const isMade = (plate: string) => published.has(plate) && handedOver().isMade(plate);
const pageFiles = (kind: ContentPage['kind']) =>
  sound.pages.filter((page) => page.kind === kind).map((page) => page.file);

const textFiles = (isOne: (plate: string, original: string) => boolean) =>
  sound.overlays.filter(({ plate, original }) => isOne(plate, original)).map(({ file }) => file);

/** Nothing to look for is nothing to warn of. */
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
    loader: textLoader(
      new Map(
        [...published].filter(isMade).map((slug) => [slug, contentFile(`plates/${slug}/plate.md`)]),
      ),
    ),
    schema: z.object({}),
  }),
  plateTexts: defineCollection({
    loader: textLoader(
      new Map(
        sound.overlays
          .filter(({ plate }) => isMade(plate))
          .map(({ plate, language, file }) => [
            `${plate}/${language}`,
            contentFile(`plates/${plate}/${file}`),
          ]),
      ),
    ),
    schema: z.object({}),
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
