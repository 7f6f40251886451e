/** Every text of the content folder through the Markdown check, before any page is made. */
import { checkMarkdown } from '../markdown/check.ts';
import { knownPlate, type MarkdownLookup } from '../markdown/lookup.ts';
import type { Finding } from '../records/finding.ts';
import type { ContentResult } from './content.ts';
import { keyOf, type KeyPart } from './key.ts';
import type { KeptReadings } from './kept-readings.ts';

/** What texts may refer to, from a content folder that has been read. */
export function contentLookup({ plates }: ContentResult): MarkdownLookup {
  const records = new Map(plates.map(({ slug, record }) => [slug, record]));
  const known = new Map(
    [...records].map(([slug, record]) => [slug, record ? knownPlate(record) : unreadPlate]),
  );
  return {
    plate: (slug) => known.get(slug) ?? null,
    plates: () => [...known.keys()],
    picture: () => null,
  };
}

/** A plate whose record cannot be read is there all the same; its fault has been told. */
const unreadPlate = { title: '', spots: [], looks: [], covered: false };

function pageAddresses({ plates, pages }: ContentResult): Set<string> {
  const folders = { technique: 'techniques/', lesson: 'lessons/', page: '' } as const;
  return new Set([
    ...['', 'plates/', 'techniques/', 'lessons/', 'glossary/', 'about/'],
    ...plates.flatMap(({ slug }) => [`plates/${slug}/`, `plates/${slug}/captures/`]),
    ...pages.map(({ kind, id }) => `${folders[kind]}${id}/`),
  ]);
}

/**
 * Findings of all texts, in the order of the files.
 *
 * @param readings A text in which nothing was found, and which refers to what it did, is not
 *   looked through again.
 */
export async function checkTexts(
  content: ContentResult,
  readings?: KeptReadings,
): Promise<Finding[]> {
  const lookup = contentLookup(content);
  const pages = pageAddresses(content);
  const everyPage = keyOf([...pages].filter((page) => !page.startsWith('plates/')));
  const findings: Finding[] = [];
  for (const text of allTexts(content)) {
    const { plate, file, path, body, firstLine } = text;
    if (body.trim() === '') continue;
    const check = () => checkMarkdown(file, body, { plate, path, firstLine, lookup, pages });
    const print = keyOf([body, firstLine, everyPage, ...referredTo(text, lookup)]);
    // What is wrong is said with what is near, which any plate may change.
    const isSound = (found: Finding[]) => found.length === 0;
    const found = readings ? await readings.of('text', path, print, check, isSound) : await check();
    findings.push(...found);
  }
  return findings;
}

/** Digest of all texts, to tell whether those that are published are those that were checked. */
export function textsDigest(content: ContentResult): string {
  return keyOf(allTexts(content).map(({ path, body }) => [path, body]));
}

/** The plates that a text names, its own among them, as far as a text can refer to them. */
function referredTo({ plate, body }: Text, lookup: MarkdownLookup): KeyPart[] {
  const words = new Set(body.match(/[a-z0-9]+(?:-[a-z0-9]+)*/g) ?? []);
  return [plate, ...words].flatMap((slug): KeyPart[] => {
    const known = slug === '' ? null : lookup.plate(slug);
    return known ? [slug, known as unknown as KeyPart] : [];
  });
}

interface Text {
  readonly plate: string;
  readonly file: string;
  readonly path: string;
  readonly body: string;
  readonly firstLine: number;
}

function allTexts(content: ContentResult): Text[] {
  return [
    {
      plate: '',
      file: 'collection.md',
      path: 'collection.md',
      body: content.collectionBody,
      firstLine: content.collectionBodyLine,
    },
    ...content.pages.map(({ file, body, bodyLine }) => ({
      plate: '',
      file,
      path: file,
      body,
      firstLine: bodyLine,
    })),
    ...content.plates.map(({ slug, body, bodyLine }) => ({
      plate: slug,
      file: 'plate.md',
      path: `plates/${slug}/plate.md`,
      body,
      firstLine: bodyLine,
    })),
    ...content.overlays.map(({ plate, file, body, bodyLine }) => ({
      plate,
      file,
      path: plate === '' ? file : `plates/${plate}/${file}`,
      body,
      firstLine: bodyLine,
    })),
  ];
}
