/** What the interchange documents need of a plate's page: addresses, names, the label's lines. */
import type { ManifestPlace, PlateTelling } from '../publish/presentation/manifest.ts';
import { base, plateAddress, worldAddress } from './addresses.ts';
import type { Exhibit, PublishedPlate } from './exhibit.ts';
import { dateInWords, makersInWords, processInWords } from './label-words.ts';
import { speechIn, type Speech } from './speech.ts';
import { exhibitIn, plateIn } from './translated.ts';
import { viewNames } from './view-names.ts';

/** Addresses that interchange wants absolute; paths where the exhibit's address is not known. */
export function documentAddress({ record }: Exhibit, path: string): string {
  return worldAddress(record.address, path) ?? path;
}

/** How the exhibit speaks in each of its languages, the first one first. */
export function speeches({ record: { languages } }: Exhibit): Speech[] {
  return languages.map((language) => speechIn(language, languages[0]));
}

export function manifestPlace(whole: Exhibit, { slug }: PublishedPlate): ManifestPlace {
  return {
    plate: documentAddress(whole, plateAddress(slug)),
    provider: whole.record.institution.homepage ?? documentAddress(whole, base),
  };
}

/** @param plates The list that the plate is of, in the first language. */
export function plateTellings(
  whole: Exhibit,
  plates: readonly PublishedPlate[],
  plate: PublishedPlate,
): Promise<PlateTelling[]> {
  return Promise.all(
    speeches(whole).map(async (speech): Promise<PlateTelling> => {
      const { language, words, at } = speech;
      const { record, result, slug } = plateIn(speech, plates, plate);
      const { institution, credit } = (await exhibitIn(speech)).record;
      const names = viewNames(result, speech);
      const lines: [string, string | undefined][] = [
        [words.label.maker, makersInWords(record)],
        [words.label.made, dateInWords(record.date, language)],
        [words.label.process, processInWords(record, words)],
        [words.label.reads, words.label.orientation[record.orientation]],
        [words.label.number, record.objectNumber],
      ];
      return {
        language,
        record,
        page: documentAddress(whole, at.plateAddress(slug)),
        provider: institution.name,
        credit: record.credit ?? credit ?? institution.name,
        metadata: lines.filter((line): line is [string, string] => line[1] !== undefined),
        words: words.plate,
        label: ({ id }) => names.get(id) ?? id,
      };
    }),
  );
}

export function jsonDocument(document: object, type: string): Response {
  return new Response(`${JSON.stringify(document, null, 1)}\n`, {
    headers: { 'content-type': type },
  });
}
