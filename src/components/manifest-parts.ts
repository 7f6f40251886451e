/** What the interchange documents need of a plate's page: addresses, names, the label's lines. */
import { base, worldAddress } from './addresses.ts';
import { dateInWords, makersInWords, processInWords } from './label-words.ts';
import { speechIn } from './speech.ts';
import { viewNames } from './view-names.ts';
import type { Exhibit, PublishedPlate } from './exhibit.ts';
import type { ManifestPlace } from '../publish/presentation/manifest.ts';
import type { ViewWords } from '../publish/presentation/view-body.ts';

/** Addresses that interchange wants absolute; paths where the exhibit's address is not known. */
export function documentAddress({ record }: Exhibit, path: string): string {
  return worldAddress(record.address, path) ?? path;
}

export function manifestPlace(exhibit: Exhibit, { slug, record }: PublishedPlate): ManifestPlace {
  const { institution, credit } = exhibit.record;
  const { words } = speechIn(exhibit.language, exhibit.language);
  const lines: [string, string | undefined][] = [
    [words.label.maker, makersInWords(record)],
    [words.label.made, dateInWords(record.date, exhibit.language)],
    [words.label.process, processInWords(record, words)],
    [words.label.reads, words.label.orientation[record.orientation]],
    [words.label.number, record.objectNumber],
  ];
  return {
    plate: documentAddress(exhibit, `${base}plates/${slug}/`),
    exhibit: documentAddress(exhibit, base),
    provider: { name: institution.name, homepage: institution.homepage ?? null },
    credit: record.credit ?? credit ?? institution.name,
    metadata: lines.filter((line): line is [string, string] => line[1] !== undefined),
  };
}

export function viewWords({ language }: Exhibit, { result }: PublishedPlate): ViewWords {
  const names = viewNames(result, speechIn(language, language));
  return { language, label: (view) => names.get(view.id) ?? view.id };
}

export function jsonDocument(document: object, type: string): Response {
  return new Response(`${JSON.stringify(document, null, 1)}\n`, {
    headers: { 'content-type': type },
  });
}
