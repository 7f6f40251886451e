import { expect, test } from 'vitest';
import { pageKeys, type PageKeys } from '../../src/integration/page-keys.ts';
import type { PublishedPlate } from '../../src/publish/published-plates.ts';

const slugs = ['arch', 'bell', 'cove', 'dune'];
const plates = slugs.map((slug) => ({ slug })) as unknown as PublishedPlate[];
/** Dune is shown as like arch, whose text names cove. */
const alike = { arch: ['dune'], bell: [], cove: [], dune: [] };

function keys(digests: Readonly<Record<string, string>>): PageKeys {
  const own = new Map(
    slugs.map((slug) => [
      slug,
      { digest: digests[slug] ?? 'as before', text: slug === 'arch' ? 'Beside [cove].' : '' },
    ]),
  );
  return pageKeys('program', plates, own, alike);
}

const changed = (before: ReadonlyMap<string, string>, after: ReadonlyMap<string, string>) =>
  slugs.filter((slug) => before.get(slug) !== after.get(slug));

test.each([
  { what: 'dune', pages: ['arch', 'cove', 'dune'], words: ['dune'] },
  { what: 'cove', pages: ['arch', 'bell', 'cove', 'dune'], words: ['arch', 'cove'] },
  { what: 'bell', pages: ['arch', 'bell', 'cove'], words: ['bell'] },
])(
  'a change of $what reaches the pages beside it, like it and naming it, and the words of the last',
  ({ what, pages, words }) => {
    const before = keys({});
    const after = keys({ [what]: 'changed' });
    expect(changed(before.pages, after.pages)).toEqual(pages);
    expect(changed(before.words, after.words)).toEqual(words);
  },
);
