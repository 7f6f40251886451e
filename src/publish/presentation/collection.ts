/** The whole exhibit as a IIIF Presentation 3 Collection of its plates' manifests. */
import { languageMap } from './language-map.ts';
import type { Json } from './view-body.ts';

/** The exhibit as it is told in one language. */
export interface ExhibitTelling {
  readonly language: string;
  readonly title: string;
  /** Titles of the plates, in the order of their manifests. */
  readonly plates: readonly string[];
}

/**
 * @param exhibit Address of the exhibit, absolute, with a slash at the end.
 * @param manifests Addresses of the manifests, absolute.
 * @param tellings In each language of the exhibit, its first one first.
 */
export function manifestCollection(
  exhibit: string,
  manifests: readonly string[],
  tellings: readonly ExhibitTelling[],
): Json {
  return {
    '@context': 'http://iiif.io/api/presentation/3/context.json',
    id: `${exhibit}collection.json`,
    type: 'Collection',
    label: languageMap(tellings, ({ title }) => title),
    items: manifests.map((id, k) => ({
      id,
      type: 'Manifest',
      label: languageMap(tellings, ({ plates }) => plates[k]),
    })),
  };
}
