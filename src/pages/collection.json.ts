/** The whole exhibit as a IIIF Presentation 3 collection. */
import type { APIRoute } from 'astro';
import { base } from '../components/addresses.ts';
import { exhibit, publishedPlates } from '../components/exhibit.ts';
import { documentAddress, jsonDocument } from '../components/manifest-parts.ts';
import { manifestCollection } from '../publish/presentation/collection.ts';

export const GET: APIRoute = async () => {
  const whole = await exhibit();
  const plates = (await publishedPlates()).map(({ slug, record }) => ({
    manifest: documentAddress(whole, `${base}plates/${slug}/manifest.json`),
    title: record.title,
  }));
  const root = documentAddress(whole, base);
  const { title } = whole.record;
  return jsonDocument(
    manifestCollection(root, title, whole.language, plates),
    'application/ld+json',
  );
};
