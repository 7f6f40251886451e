/** The whole exhibit as a IIIF Presentation 3 collection. */
import type { APIRoute } from 'astro';
import { base, plateAddress } from '../components/addresses.ts';
import { exhibit, publishedPlates } from '../components/exhibit.ts';
import { documentAddress, jsonDocument, speeches } from '../components/manifest-parts.ts';
import { exhibitIn, platesIn } from '../components/translated.ts';
import { manifestCollection } from '../publish/presentation/collection.ts';

export const GET: APIRoute = async () => {
  const whole = await exhibit();
  const plates = await publishedPlates();
  const manifests = plates.map(({ slug }) =>
    documentAddress(whole, `${plateAddress(slug)}manifest.json`),
  );
  const tellings = await Promise.all(
    speeches(whole).map(async (speech) => ({
      language: speech.language,
      title: (await exhibitIn(speech)).record.title,
      plates: platesIn(speech, plates).map(({ record }) => record.title),
    })),
  );
  return jsonDocument(
    manifestCollection(documentAddress(whole, base), manifests, tellings),
    'application/ld+json',
  );
};
