/** The plate for other institutions' programs: a IIIF Presentation 3 manifest. */
import type { APIRoute } from 'astro';
import { exhibit, type PublishedPlate } from '../../../components/exhibit.ts';
import { jsonDocument, manifestPlace, plateTellings } from '../../../components/manifest-parts.ts';
import { platePaths } from '../../../components/plate-paths.ts';
import { plateManifest } from '../../../publish/presentation/manifest.ts';

export const getStaticPaths = () => platePaths();

interface Props extends Record<string, unknown> {
  readonly plate: PublishedPlate;
  readonly plates: readonly PublishedPlate[];
}

export const GET: APIRoute<Props> = async ({ props: { plate, plates } }) => {
  const whole = await exhibit();
  const tellings = await plateTellings(whole, plates, plate);
  const manifest = plateManifest(plate.result, manifestPlace(whole, plate), tellings);
  return jsonDocument(manifest, 'application/ld+json');
};
