/** The whole exhibit as a IIIF Presentation 3 Collection of its plates' manifests. */
import type { Json } from './view-body.ts';

export interface CollectionEntry {
  /** Address of the manifest, absolute. */
  readonly manifest: string;
  readonly title: string;
}

export function manifestCollection(
  exhibit: string,
  title: string,
  language: string,
  plates: readonly CollectionEntry[],
): Json {
  return {
    '@context': 'http://iiif.io/api/presentation/3/context.json',
    id: `${exhibit}collection.json`,
    type: 'Collection',
    label: { [language]: [title] },
    items: plates.map((plate) => ({
      id: plate.manifest,
      type: 'Manifest',
      label: { [language]: [plate.title] },
    })),
  };
}
