/** The plate for other institutions' programs: a IIIF Presentation 3 manifest. */
import type { APIRoute } from 'astro';
import { exhibit, type PublishedPlate } from '../../../components/exhibit.ts';
import { jsonDocument, manifestPlace, viewWords } from '../../../components/manifest-parts.ts';
import { platePaths } from '../../../components/plate-paths.ts';
import { plateManifest } from '../../../publish/presentation/manifest.ts';

export const getStaticPaths = () => platePaths();

export const GET: APIRoute<{ plate: PublishedPlate }> = async ({ props: { plate } }) => {
  const whole = await exhibit();
  const place = manifestPlace(whole, plate);
  const manifest = plateManifest(plate.record, plate.result, place, viewWords(whole, plate));
  return jsonDocument(manifest, 'application/ld+json');
};
