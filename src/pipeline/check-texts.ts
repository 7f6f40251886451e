/** Every text of the content folder through the Markdown check, before any page is made. */
import { checkMarkdown } from '../markdown/check.ts';
import { knownPlate, type MarkdownLookup } from '../markdown/lookup.ts';
import type { Finding } from '../records/finding.ts';
import type { ContentResult } from './content.ts';

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

/** Findings of all texts, in the order of the files. */
export async function checkTexts(content: ContentResult): Promise<Finding[]> {
  const lookup = contentLookup(content);
  const pages = pageAddresses(content);
  const texts = [
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
  const findings: Finding[] = [];
  for (const { plate, file, path, body, firstLine } of texts) {
    if (body.trim() === '') continue;
    findings.push(...(await checkMarkdown(file, body, { plate, path, firstLine, lookup, pages })));
  }
  return findings;
}
