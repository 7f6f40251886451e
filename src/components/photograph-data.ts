/**
 * A plate for search engines, in the words of schema.org (`Photograph`, `ImageObject` with its
 * licence fields). Only what the record says, in the words of the page's language where the
 * museum has written them; a covered plate offers no picture.
 */
import type { CollectionRecord } from '../records/collection.ts';
import type { PublishedPlate } from './exhibit.ts';
import type { Words } from '../words/words.ts';
import { processInWords, rightsInWords } from './label-words.ts';

export interface DataPicture {
  readonly address: string;
  readonly width: number;
  readonly height: number;
  readonly reading: 'positive' | 'negative';
}

interface Parts {
  readonly plate: PublishedPlate;
  readonly collection: CollectionRecord;
  /** The page's address for the world, where it is known. */
  readonly address: string | undefined;
  readonly identifier: string;
  readonly pictures: readonly DataPicture[];
  readonly words: Words;
  /** Of the page, BCP 47. */
  readonly language: string;
}

export function photographData(parts: Parts) {
  const { plate, collection, address, identifier, pictures, words, language } = parts;
  const { record } = plate;
  const { institution } = collection;
  const creditText = record.credit ?? collection.credit ?? institution.name;
  const organisation = {
    '@type': 'Organization',
    name: institution.name,
    url: institution.homepage,
  };
  const rights = {
    license: record.rights,
    acquireLicensePage: address && `${address}#rights`,
    creditText,
    copyrightNotice: rightsInWords(record.rights, words),
    creator: organisation,
  };
  return {
    '@type': 'Photograph',
    '@id': identifier,
    name: record.title,
    identifier: [identifier, record.objectNumber].filter((one) => one !== undefined),
    url: address,
    mainEntityOfPage: { '@type': 'WebPage', url: address, inLanguage: language },
    description: record.description.positive,
    material: processInWords(record, words),
    temporalCoverage: record.date,
    locationCreated: record.place && { '@type': 'Place', name: record.place },
    creator: record.maker.map(({ name }) => ({ '@type': 'Person', name })),
    width: millimetres(record.size, 0),
    height: millimetres(record.size, 1),
    license: record.rights,
    creditText,
    isPartOf: {
      '@type': 'Collection',
      name: collection.title,
      url: collection.address,
    },
    provider: organisation,
    image: pictures.map(({ address: contentUrl, width, height, reading }) => ({
      '@type': 'ImageObject',
      contentUrl,
      width,
      height,
      caption: record.description[reading],
      ...rights,
    })),
  };
}

/** UN/CEFACT code MMT is the millimetre. */
function millimetres(size: PublishedPlate['record']['size'], side: 0 | 1) {
  if (!Array.isArray(size)) return undefined;
  return { '@type': 'QuantitativeValue', value: size[side], unitCode: 'MMT' };
}
