/**
 * A plate for search engines, in the words of schema.org (`Photograph`, `ImageObject`). Only
 * what the record says; a covered plate offers no picture.
 */
import type { CollectionRecord } from '../records/collection.ts';
import type { PublishedPlate } from './exhibit.ts';
import { processInWords } from './label-words.ts';

interface Parts {
  readonly plate: PublishedPlate;
  readonly collection: CollectionRecord;
  /** The page's address for the world, where it is known. */
  readonly address: string | undefined;
  readonly picture: string | undefined;
}

export function photographData({ plate, collection, address, picture }: Parts) {
  const { record } = plate;
  const creditText = record.credit ?? collection.credit;
  return {
    '@type': 'Photograph',
    name: record.title,
    identifier: record.objectNumber,
    url: address,
    material: processInWords(record),
    temporalCoverage: record.date,
    locationCreated: record.place && { '@type': 'Place', name: record.place },
    creator: record.maker.map(({ name }) => ({ '@type': 'Person', name })),
    width: millimetres(record.size, 0),
    height: millimetres(record.size, 1),
    license: record.rights,
    creditText,
    provider: { '@type': 'Organization', name: collection.institution.name },
    image: picture && {
      '@type': 'ImageObject',
      contentUrl: picture,
      caption: record.description.positive,
      license: record.rights,
      creditText,
    },
  };
}

/** UN/CEFACT code MMT is the millimetre. */
function millimetres(size: PublishedPlate['record']['size'], side: 0 | 1) {
  if (!Array.isArray(size)) return undefined;
  return { '@type': 'QuantitativeValue', value: size[side], unitCode: 'MMT' };
}
