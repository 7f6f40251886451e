/**
 * The museum's texts as a page of some language shows them: those of the overlay in it, and the
 * originals, marked with their own language, where it says nothing.
 */
import { getCollection, type CollectionEntry } from 'astro:content';
import { joinOverlay } from '../records/join-overlay.ts';
import { exhibit, type PublishedPlate } from './exhibit.ts';
import type { Speech } from './speech.ts';

/** The `lang` of a text by its name (`title`, `spots.sky.note`): none where it is the page's. */
export type Mark = (text: string) => string | undefined;
type Page = Pick<Speech, 'language' | 'original'>;

/** For a plate that {@link platesIn} gave, or for one in its own language. */
export function markOf(plate: PublishedPlate, original: string | undefined): Mark {
  return (text) => (plate.translated.has(text) ? undefined : original);
}

/** Whether an overlay has a text of its own, beyond its fields. */
const hasBody = (entry: { readonly body?: string | undefined } | undefined): boolean =>
  (entry?.body ?? '').trim() !== '';

type Plates = readonly PublishedPlate[];
/** The list is made once for all pages of a build, and so is each translation of it. */
const made = new WeakMap<Plates, Map<string, Plates>>();

export function platesIn({ language, original }: Page, plates: Plates): Plates {
  if (original === undefined) return plates;
  const lists = made.get(plates) ?? new Map<string, Plates>();
  made.set(plates, lists);
  const list = lists.get(language) ?? translatedPlates(language, plates);
  lists.set(language, list);
  return list;
}

function translatedPlates(language: string, plates: Plates): Plates {
  return plates.map((plate) => {
    const text = plate.texts.find((one) => one.language === language);
    if (!text) return plate;
    const { record, translated } = joinOverlay(plate.record, text.record);
    return { ...plate, record, translated, ...(text.hasBody && { translation: language }) };
  });
}

/** One plate of a list, in the page's language. */
export function plateIn(page: Page, plates: Plates, plate: PublishedPlate): PublishedPlate {
  return platesIn(page, plates).find(({ slug }) => slug === plate.slug) ?? plate;
}

export async function exhibitIn({ language, original }: Page) {
  const { record, entry } = await exhibit();
  const texts = original === undefined ? [] : await getCollection('collectionTexts');
  const overlay = texts.find(({ id }) => id === language);
  return { ...laidOver(record, overlay, original), text: hasBody(overlay) ? overlay! : entry };
}

type Writing =
  CollectionEntry<'techniques'> | CollectionEntry<'lessons'> | CollectionEntry<'pages'>;

/** A technique, a lesson or a page. */
export async function writingIn<T extends Writing>({ language, original }: Page, entry: T) {
  const texts = original === undefined ? [] : await getCollection('pageTexts');
  const overlay = texts.find(({ id }) => id === `${entry.collection}/${entry.id}/${language}`);
  return { ...laidOver(entry.data, overlay, original), text: hasBody(overlay) ? overlay! : entry };
}

function laidOver<R>(
  original: R,
  overlay: { readonly data: object; readonly body?: string | undefined } | undefined,
  language: string | undefined,
) {
  const { record, translated } = joinOverlay(original, overlay?.data);
  const mark: Mark = (text) => (translated.has(text) ? undefined : language);
  return { record, mark, translated: hasBody(overlay) };
}
