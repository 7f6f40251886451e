/** What the documents about the whole exhibit are made from: feed, list of pages, tables. */
import { getCollection } from 'astro:content';
import { plateIdentifier } from '../publish/identifier.ts';
import type { FeedEntry } from '../publish/feed.ts';
import { plateDates } from '../publish/plate-dates.ts';
import { plateRow, type PlateRow } from '../publish/plate-table.ts';
import type { SitemapPage } from '../publish/sitemap.ts';
import { previewViews } from '../records/preview-views.ts';
import { base, plateAddress, previewAddress, type Addresses } from './addresses.ts';
import { exhibit, publishedPlates, type Exhibit, type PublishedPlate } from './exhibit.ts';
import { documentAddress, speeches } from './manifest-parts.ts';
import { orderAddress, plateOrders } from './plate-order.ts';

/** Lasting name of a plate; a path where the exhibit has no address of its own. */
export function identifierOf(whole: Exhibit, { record, slug }: PublishedPlate): string {
  return plateIdentifier(record, slug, documentAddress(whole, base));
}

/** The same page in the exhibit's further languages. */
function furtherPages(whole: Exhibit, path: (at: Addresses) => string): FeedEntry['further'] {
  return speeches(whole)
    .slice(1)
    .map(({ language, at }) => [language, documentAddress(whole, path(at))]);
}

/** The feed is in the first language, and leads to the pages in all of them. */
export const feedPages = (whole: Exhibit) => furtherPages(whole, ({ home }) => home);

/** The feed's entries; a covered plate is in no feed. */
export async function feedEntries(whole: Exhibit): Promise<FeedEntry[]> {
  return (await publishedPlates()).flatMap((plate) => {
    const { record, result, slug } = plate;
    const dates = plateDates(record, result);
    if (dates === null || record.advisory !== undefined) return [];
    const picture =
      previewViews(record, result).length > 0 ? documentAddress(whole, previewAddress(slug)) : null;
    return {
      identifier: identifierOf(whole, plate),
      page: documentAddress(whole, plateAddress(slug)),
      further: furtherPages(whole, (at) => at.plateAddress(slug)),
      title: record.title,
      summary: record.description.positive,
      dates,
      picture,
    };
  });
}

export async function plateRows(): Promise<PlateRow[]> {
  const whole = await exhibit();
  return (await publishedPlates()).map((plate) =>
    plateRow(plate.record, plate.result, {
      identifier: identifierOf(whole, plate),
      page: documentAddress(whole, plateAddress(plate.slug)),
      credit: plate.record.credit ?? whole.record.credit ?? null,
    }),
  );
}

/** Every page that search engines may list, in each language of the exhibit. */
export async function listedPages(whole: Exhibit): Promise<SitemapPage[]> {
  const techniques = await getCollection('techniques');
  const lessons = await getCollection('lessons');
  const pages = await getCollection('pages');
  const plain: ((at: Addresses) => string)[] = [
    (at) => at.home,
    ...plateOrders.map((order) => (at: Addresses) => orderAddress(order, at)),
    (at) => at.searchPage,
    (at) => at.planner,
    ...(techniques.length > 0 ? [(at: Addresses) => at.techniquesIndex] : []),
    ...techniques.map(
      ({ id }) =>
        (at: Addresses) =>
          at.techniqueAddress(id),
    ),
    ...(lessons.length > 0 ? [(at: Addresses) => at.lessonsIndex] : []),
    ...lessons.map(
      ({ id }) =>
        (at: Addresses) =>
          at.lessonAddress(id),
    ),
    ...pages.map(
      ({ id }) =>
        (at: Addresses) =>
          `${at.home}${id}/`,
    ),
  ];
  const plates = (await publishedPlates()).flatMap(({ slug, record, result }) => {
    const changed = plateDates(record, result)?.changed ?? null;
    return [
      { path: (at: Addresses) => at.plateAddress(slug), changed },
      { path: (at: Addresses) => at.capturesAddress(slug), changed },
    ];
  });
  const tongues = speeches(whole);
  return [...plain.map((path) => ({ path, changed: null })), ...plates].flatMap(
    ({ path, changed }) => {
      const all = tongues.map(
        ({ language, at }) => [language, documentAddress(whole, path(at))] as const,
      );
      const languages = all.length > 1 ? all : [];
      return all.map(([, address]) => ({ address, changed, languages }));
    },
  );
}
