/** What the documents about the whole exhibit are made from: feed, list of pages, tables. */
import { getCollection } from 'astro:content';
import { plateIdentifier } from '../publish/identifier.ts';
import type { FeedEntry } from '../publish/feed.ts';
import { plateDates } from '../publish/plate-dates.ts';
import { plateRow, type PlateRow } from '../publish/plate-table.ts';
import type { SitemapPage } from '../publish/sitemap.ts';
import { previewViews } from '../records/preview-views.ts';
import {
  addressesUnder,
  base,
  capturesAddress,
  home,
  lessonAddress,
  lessonsIndex,
  plateAddress,
  previewAddress,
  searchPage,
  techniqueAddress,
  techniquesIndex,
} from './addresses.ts';
import { exhibit, publishedPlates, type Exhibit, type PublishedPlate } from './exhibit.ts';
import { documentAddress } from './manifest-parts.ts';
import { orderAddress, plateOrders } from './plate-order.ts';

/** Lasting name of a plate; a path where the exhibit has no address of its own. */
export function identifierOf(whole: Exhibit, { record, slug }: PublishedPlate): string {
  return plateIdentifier(record, slug, documentAddress(whole, base));
}

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

/** Every page that search engines may list. */
export async function listedPages(whole: Exhibit): Promise<SitemapPage[]> {
  const techniques = await getCollection('techniques');
  const lessons = await getCollection('lessons');
  const pages = await getCollection('pages');
  const plain = [
    home,
    ...plateOrders.map((order) => orderAddress(order, addressesUnder(base))),
    searchPage,
    ...(techniques.length > 0 ? [techniquesIndex] : []),
    ...techniques.map(({ id }) => techniqueAddress(id)),
    ...(lessons.length > 0 ? [lessonsIndex] : []),
    ...lessons.map(({ id }) => lessonAddress(id)),
    ...pages.map(({ id }) => `${base}${id}/`),
  ].map((path) => ({ path, changed: null as string | null }));
  const plates = (await publishedPlates()).flatMap(({ slug, record, result }) => {
    const changed = plateDates(record, result)?.changed ?? null;
    return [plateAddress(slug), capturesAddress(slug)].map((path) => ({ path, changed }));
  });
  return [...plain, ...plates].map(({ path, changed }) => ({
    address: documentAddress(whole, path),
    changed,
    languages: [],
  }));
}
