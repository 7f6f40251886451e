/** The plate as an object in the words of Linked Art. */
import type { APIRoute } from 'astro';
import { base, plateAddress } from '../../../components/addresses.ts';
import { identifierOf } from '../../../components/exhibit-documents.ts';
import { exhibit, type PublishedPlate } from '../../../components/exhibit.ts';
import { dateInWords, makersInWords, processInWords } from '../../../components/label-words.ts';
import { documentAddress, jsonDocument } from '../../../components/manifest-parts.ts';
import { platePaths } from '../../../components/plate-paths.ts';
import { speechIn } from '../../../components/speech.ts';
import { linkedArtObject } from '../../../publish/linked-art.ts';

export const getStaticPaths = () => platePaths();

export const GET: APIRoute<{ plate: PublishedPlate }> = async ({ props: { plate } }) => {
  const whole = await exhibit();
  const { record, result, slug } = plate;
  const { institution, credit } = whole.record;
  const document = linkedArtObject(record, result, {
    identifier: identifierOf(whole, plate),
    page: documentAddress(whole, plateAddress(slug)),
    exhibit: documentAddress(whole, base),
    language: whole.language,
    institution: { name: institution.name, homepage: institution.homepage ?? null },
    credit: record.credit ?? credit ?? null,
    process: processInWords(record, speechIn(whole.language, whole.language).words),
    date: dateInWords(record.date, whole.language),
    makers: makersInWords(record),
  });
  return jsonDocument(document, 'application/ld+json');
};
