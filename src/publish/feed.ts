/**
 * The feed of new and changed plates, for readers who want to be told.
 *
 * References
 * - RFC 4287, The Atom Syndication Format.
 */
import { xml, type XmlPart } from './xml.ts';
import type { PlateDates } from './plate-dates.ts';

export interface FeedEntry {
  /** Lasting name of the plate, a URI. */
  readonly identifier: string;
  readonly page: string;
  readonly title: string;
  readonly summary: string;
  readonly dates: PlateDates;
  /** A picture's address; null where there is none to show. */
  readonly picture: string | null;
}

export interface Feed {
  /** Address of the exhibit, with a slash at the end. */
  readonly exhibit: string;
  readonly title: string;
  readonly subtitle: string;
  readonly author: string;
  readonly language: string;
  readonly rights: string | null;
}

/** Entries that a feed holds: readers ask for it often. */
const longest = 50;

const moment = (day: string) => `${day}T00:00:00Z`;

/** Newest change first, then by name. */
export function atomFeed(feed: Feed, plates: readonly FeedEntry[]): string {
  const entries = [...plates]
    .sort(
      (a, b) =>
        b.dates.changed.localeCompare(a.dates.changed) || (a.identifier < b.identifier ? -1 : 1),
    )
    .slice(0, longest);
  const { exhibit, title, subtitle, author, language, rights } = feed;
  const updated = entries[0]?.dates.changed ?? '1970-01-01';
  return xml([
    'feed',
    { xmlns: 'http://www.w3.org/2005/Atom', 'xml:lang': language },
    ['id', {}, exhibit],
    ['title', {}, title],
    ['subtitle', {}, subtitle],
    ['updated', {}, moment(updated)],
    ['author', {}, ['name', {}, author]],
    ['link', { rel: 'self', type: 'application/atom+xml', href: `${exhibit}feed.xml` }],
    ['link', { rel: 'alternate', type: 'text/html', href: exhibit }],
    ...(rights === null ? [] : ([['rights', {}, rights]] as XmlPart[])),
    ...entries.map(entryPart),
  ]);
}

function entryPart({ identifier, page, title, summary, dates, picture }: FeedEntry): XmlPart {
  return [
    'entry',
    {},
    ['id', {}, identifier],
    ['title', {}, title],
    ['link', { rel: 'alternate', type: 'text/html', href: page }],
    ...(picture === null
      ? []
      : ([['link', { rel: 'enclosure', type: 'image/jpeg', href: picture }]] as XmlPart[])),
    ['published', {}, moment(dates.published)],
    ['updated', {}, moment(dates.changed)],
    ['summary', {}, dates.note === null ? summary : `${dates.note} ${summary}`],
  ];
}
