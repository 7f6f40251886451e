/**
 * The list of pages for search engines, with the same page in other languages.
 *
 * References
 * - Sitemaps XML format 0.9, https://www.sitemaps.org/protocol.html
 */
import { xml, type XmlPart } from './xml.ts';

export interface SitemapPage {
  readonly address: string;
  /** `YYYY-MM-DD` from content; null where it says none. */
  readonly changed: string | null;
  /** Addresses of the same page by language, this one included; empty with one language. */
  readonly languages: readonly (readonly [language: string, address: string])[];
}

export function sitemap(pages: readonly SitemapPage[]): string {
  const sorted = [...pages].sort((a, b) => (a.address < b.address ? -1 : 1));
  return xml([
    'urlset',
    {
      xmlns: 'http://www.sitemaps.org/schemas/sitemap/0.9',
      'xmlns:xhtml': 'http://www.w3.org/1999/xhtml',
    },
    ...sorted.map(({ address, changed, languages }): XmlPart => [
      'url',
      {},
      ['loc', {}, address],
      ...(changed === null ? [] : ([['lastmod', {}, changed]] as XmlPart[])),
      ...languages.map(([language, href]): XmlPart => [
        'xhtml:link',
        { rel: 'alternate', hreflang: language, href },
      ]),
    ]),
  ]);
}
