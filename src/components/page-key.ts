/**
 * What the pages of one plate depend on, as a digest: a build makes those pages again whose
 * digest has changed and takes the others as they were (Astro's incremental builds). Rather too
 * much than too little is in it: the whole program, everything that is not a plate, the plate's
 * own files and their translations, the plates beside it and like it, and every plate that its text names.
 */
import { getCollection } from 'astro:content';
import { createHash } from 'node:crypto';
import { exhibit, publishedPlates } from './exhibit.ts';
import { relatedPlates } from './related.ts';
import { speechIn } from './speech.ts';

const digestOf = (parts: readonly (string | undefined)[]): string =>
  createHash('sha256').update(JSON.stringify(parts)).digest('hex');

interface Digested {
  readonly id: string;
  readonly digest?: string | number | undefined;
}
function named({ id, digest }: Digested): string {
  if (digest === undefined) throw new Error(`Astro gave no digest of "${id}".`);
  return `${id} ${digest}`;
}

/** The key of each published plate's pages, by slug. */
async function pageKeys(everywhere: string): Promise<ReadonlyMap<string, string>> {
  const results = new Map((await getCollection('records')).map((entry) => [entry.id, entry]));
  const sittings = new Map<string, string[]>();
  for (const entry of await getCollection('sittings')) {
    const slug = entry.id.split('/')[0];
    sittings.set(slug, [...(sittings.get(slug) ?? []), named(entry)]);
  }
  const bodies = new Map<string, string>();
  const texts = new Map<string, string[]>();
  for (const entry of await getCollection('plateTexts')) {
    const slug = entry.id.split('/')[0];
    texts.set(slug, [...(texts.get(slug) ?? []), named(entry)]);
    bodies.set(slug, `${bodies.get(slug) ?? ''}\n${entry.body ?? ''}`);
  }
  const plates = await publishedPlates();
  const own = new Map(
    plates.map(({ slug, entry }) => [
      slug,
      digestOf([
        named(entry),
        named(results.get(slug)!),
        ...(sittings.get(slug) ?? []),
        ...(texts.get(slug) ?? []),
      ]),
    ]),
  );
  const { languages } = (await exhibit()).record;
  const tongues = languages.map((language) => speechIn(language, languages[0]).words);
  return new Map(
    plates.map((one, at) => {
      const { slug, entry } = one;
      const others = [
        ...[plates[at - 1], plates[at + 1]].map((plate) => plate?.slug),
        ...tongues
          .flatMap((words) => relatedPlates(one, plates, words))
          .map(({ plate }) => plate.slug),
        ...mentioned(`${entry.body ?? ''}${bodies.get(slug) ?? ''}`, own),
      ];
      const theirs = others.map((other) => other && `${other} ${own.get(other)}`);
      return [slug, digestOf([everywhere, own.get(slug), ...theirs])];
    }),
  );
}

/** Slugs that stand in a text, in whatever way. */
function mentioned(text: string, plates: ReadonlyMap<string, string>): string[] {
  const tokens = new Set(text.match(/[a-z0-9]+(?:-[a-z0-9]+)*/g) ?? []);
  return [...tokens].filter((token) => plates.has(token)).sort();
}

/** What all pages depend on, where a build has told it (`src/pipeline/page-inputs.ts`). */
const everywhere = process.env['MIRRORLEAF_INPUTS'];
/** Asked for by every route of a plate, and the same for all of one build. */
const ofThisBuild = everywhere === undefined ? null : pageKeys(everywhere);

/** The key of a plate's pages; none while writing, when every page is made as it is asked for. */
export async function pageKey(slug: string): Promise<string | undefined> {
  return (await ofThisBuild)?.get(slug);
}
