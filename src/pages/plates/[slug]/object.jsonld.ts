/** The plate as an object in the words of Linked Art. */
import type { APIRoute } from 'astro';
import { base, plateAddress } from '../../../components/addresses.ts';
import { identifierOf } from '../../../components/exhibit-documents.ts';
import { exhibit, type PublishedPlate } from '../../../components/exhibit.ts';
import { dateInWords, makersInWords, processInWords } from '../../../components/label-words.ts';
import { documentAddress, jsonDocument, speeches } from '../../../components/manifest-parts.ts';
import { platePaths } from '../../../components/plate-paths.ts';
import { plateIn } from '../../../components/translated.ts';
import { linkedArtObject } from '../../../publish/linked-art.ts';

export const getStaticPaths = () => platePaths();

interface Props extends Record<string, unknown> {
  readonly plate: PublishedPlate;
  readonly plates: readonly PublishedPlate[];
}

export const GET: APIRoute<Props> = async ({ props: { plate, plates } }) => {
  const whole = await exhibit();
  const { record, result, slug } = plate;
  const [main, ...others] = speeches(whole);
  const further = others.map((speech) => {
    const { record: said, translated } = plateIn(speech, plates, plate);
    const { positive, negative } = said.description;
    return {
      language: speech.language,
      title: translated.has('title') ? said.title : undefined,
      descriptions: [
        ...(translated.has('description.positive') ? [positive] : []),
        ...(translated.has('description.negative') ? [negative] : []),
      ],
    };
  });
  const { institution, credit } = whole.record;
  const document = linkedArtObject(record, result, {
    identifier: identifierOf(whole, plate),
    page: documentAddress(whole, plateAddress(slug)),
    exhibit: documentAddress(whole, base),
    language: whole.language,
    institution: { name: institution.name, homepage: institution.homepage ?? null },
    credit: record.credit ?? credit ?? null,
    process: processInWords(record, main.words),
    date: dateInWords(record.date, whole.language),
    makers: makersInWords(record),
    further,
  });
  return jsonDocument(document, 'application/ld+json');
};
