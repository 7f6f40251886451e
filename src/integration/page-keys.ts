/**
 * What the pages of one plate depend on, as a digest: a build makes those pages again whose
 * digest has changed and leaves the others where they stand. Rather too much than too little is
 * in it: the whole program, everything that is not a plate, the plate's own files and results,
 * the plates beside it and like it, and every plate that its text names.
 */
import { createHash } from 'node:crypto';
import type { PublishedPlate } from '../publish/published-plates.ts';

/** What stands in a plate's own files. */
export interface PlateDigest {
  readonly digest: string;
  /** Its text in all languages, which may name other plates. */
  readonly text: string;
}

const digestOf = (parts: readonly (string | undefined)[]): string =>
  createHash('sha256').update(JSON.stringify(parts)).digest('hex');

export interface PageKeys {
  /** Of all that stands on a plate's pages. */
  readonly pages: ReadonlyMap<string, string>;
  /**
   * Of what a search finds on them: the plates beside it and like it are shown, but kept out of
   * the index of words (`data-pagefind-ignore`).
   */
  readonly words: ReadonlyMap<string, string>;
}

/**
 * The keys of each plate's pages, by slug.
 *
 * @param everywhere What all pages depend on (`src/pipeline/page-inputs.ts`).
 * @param plates In catalogue order.
 * @param alike Slugs of the plates that a plate's page shows as related, by its own.
 */
export function pageKeys(
  everywhere: string,
  plates: readonly PublishedPlate[],
  own: ReadonlyMap<string, PlateDigest>,
  alike: Readonly<Record<string, readonly string[]>>,
): PageKeys {
  const theirs = (others: readonly (string | undefined)[]) =>
    others.map((other) => other && `${other} ${own.get(other)?.digest}`);
  const words = new Map(
    plates.map(({ slug }) => {
      const { digest, text } = own.get(slug)!;
      return [slug, digestOf([everywhere, digest, ...theirs(mentioned(text, own))])];
    }),
  );
  const pages = new Map(
    plates.map(({ slug }, at) => {
      const beside = [plates[at - 1], plates[at + 1]].map((plate) => plate?.slug);
      const others = theirs([...beside, ...(alike[slug] ?? [])]);
      return [slug, digestOf([words.get(slug), ...others])];
    }),
  );
  return { pages, words };
}

/** Slugs that stand in a text, in whatever way. */
function mentioned(text: string, plates: ReadonlyMap<string, unknown>): string[] {
  const tokens = new Set(text.match(/[a-z0-9]+(?:-[a-z0-9]+)*/g) ?? []);
  return [...tokens].filter((token) => plates.has(token)).sort();
}
