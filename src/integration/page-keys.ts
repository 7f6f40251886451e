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

/**
 * The key of each plate's pages, by slug.
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
): ReadonlyMap<string, string> {
  return new Map(
    plates.map(({ slug }, at) => {
      const others = [
        ...[plates[at - 1], plates[at + 1]].map((plate) => plate?.slug),
        ...(alike[slug] ?? []),
        ...mentioned(own.get(slug)!.text, own),
      ];
      const theirs = others.map((other) => other && `${other} ${own.get(other)?.digest}`);
      return [slug, digestOf([everywhere, own.get(slug)!.digest, ...theirs])];
    }),
  );
}

/** Slugs that stand in a text, in whatever way. */
function mentioned(text: string, plates: ReadonlyMap<string, unknown>): string[] {
  const tokens = new Set(text.match(/[a-z0-9]+(?:-[a-z0-9]+)*/g) ?? []);
  return [...tokens].filter((token) => plates.has(token)).sort();
}
