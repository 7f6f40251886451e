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
  /** The same page in other languages: tag and address. */
  readonly further: readonly (readonly [language: string, address: string])[];
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
  /** The exhibit in other languages: tag and address. */
  readonly further: FeedEntry['further'];
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
  const { exhibit, title, subtitle, author, language, rights, further } = feed;
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
    ...pageLinks(exhibit, language, further),
    ...(rights === null ? [] : ([['rights', {}, rights]] as XmlPart[])),
    ...entries.map((entry) => entryPart(entry, language)),
  ]);
}

/** One `alternate` a language (RFC 4287, 4.1.1); none is named where there is one alone. */
function pageLinks(page: string, language: string, further: FeedEntry['further']): XmlPart[] {
  const link = (href: string, hreflang?: string): XmlPart => [
    'link',
    { rel: 'alternate', type: 'text/html', ...(hreflang && { hreflang }), href },
  ];
  if (further.length === 0) return [link(page)];
  return [link(page, language), ...further.map(([tag, href]) => link(href, tag))];
}

function entryPart(entry: FeedEntry, language: string): XmlPart {
  const { identifier, page, further, title, summary, dates, picture } = entry;
  return [
    'entry',
    {},
    ['id', {}, identifier],
    ['title', {}, title],
    ...pageLinks(page, language, further),
    ...(picture === null
      ? []
      : ([['link', { rel: 'enclosure', type: 'image/jpeg', href: picture }]] as XmlPart[])),
    ['published', {}, moment(dates.published)],
    ['updated', {}, moment(dates.changed)],
    ['summary', {}, dates.note === null ? summary : `${dates.note} ${summary}`],
  ];
}
