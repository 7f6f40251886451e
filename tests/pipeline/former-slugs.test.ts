import { expect, test } from 'vitest';
import { collectionFindings } from '../../src/pipeline/content/collection-findings.ts';
import type { ContentPlate } from '../../src/pipeline/content.ts';
import { plateSchema } from '../../src/records/plate.ts';

function plate(slug: string, formerly: string[]): ContentPlate {
  const record = plateSchema.parse({
    title: slug,
    formerly,
    process: 'daguerreotype',
    description: { positive: 'A.', negative: 'B.' },
    rights: 'https://creativecommons.org/publicdomain/zero/1.0/',
  });
  const none = { folder: '', body: '', bodyLine: 1, sittings: [], captureFiles: [], findings: [] };
  return { slug, record, ...none };
}

test('a former address that another plate has, or claims too, is told', () => {
  const plates = [plate('a', ['b', 'old']), plate('b', ['old']), plate('c', ['older'])];
  const found = collectionFindings({
    folder: '',
    collection: null,
    collectionBody: '',
    collectionBodyLine: 1,
    theme: null,
    plates,
    pages: [],
    overlays: [],
  });
  expect(found.map(({ plate: slug, code, message }) => [slug, code, message])).toEqual([
    ['a', 'address-taken', '"b" is said to be a former address, but plate "b" has it.'],
    ['b', 'address-taken', '"old" is said to be a former address, but plate "a" has it.'],
  ]);
});
