/** `feed.xml` and `sitemap.xml`: only where the exhibit has an address, which both must name. */
import type { APIRoute, GetStaticPaths } from 'astro';
import { feedEntries, feedPages, listedPages } from '../components/exhibit-documents.ts';
import { exhibit } from '../components/exhibit.ts';
import { documentAddress } from '../components/manifest-parts.ts';
import { base } from '../components/addresses.ts';
import { speechIn } from '../components/speech.ts';
import { atomFeed } from '../publish/feed.ts';
import { sitemap } from '../publish/sitemap.ts';

export const getStaticPaths = (async () =>
  (await exhibit()).record.address === undefined
    ? []
    : [
        { params: { document: 'feed' } },
        { params: { document: 'sitemap' } },
      ]) satisfies GetStaticPaths;

export const GET: APIRoute = async ({ params }) => {
  const whole = await exhibit();
  const { title, institution, rights } = whole.record;
  const feed = {
    exhibit: documentAddress(whole, base),
    title,
    subtitle: speechIn(whole.language, whole.language).words.feed,
    author: institution.name,
    language: whole.language,
    rights: rights ?? null,
    further: feedPages(whole),
  };
  const text =
    params['document'] === 'feed'
      ? atomFeed(feed, await feedEntries(whole))
      : sitemap(await listedPages(whole));
  const type = params['document'] === 'feed' ? 'application/atom+xml' : 'application/xml';
  return new Response(text, { headers: { 'content-type': type } });
};
