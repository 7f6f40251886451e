/** The plate for other institutions' programs: a IIIF Presentation 3 manifest. */
import type { APIRoute, GetStaticPaths } from 'astro';
import { exhibit, publishedPlates, type PublishedPlate } from '../../../components/exhibit.ts';
import { jsonDocument, manifestPlace, viewWords } from '../../../components/manifest-parts.ts';
import { plateManifest } from '../../../publish/presentation/manifest.ts';

export const getStaticPaths = (async () =>
  (await publishedPlates()).map((plate) => ({
    params: { slug: plate.slug },
    props: { plate },
  }))) satisfies GetStaticPaths;

export const GET: APIRoute<{ plate: PublishedPlate }> = async ({ props: { plate } }) => {
  const whole = await exhibit();
  const place = manifestPlace(whole, plate);
  const manifest = plateManifest(plate.record, plate.result, place, viewWords(whole, plate));
  return jsonDocument(manifest, 'application/ld+json');
};
