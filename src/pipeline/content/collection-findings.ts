/** What can be said only when all plates are known: names that refer to plates, numbers used twice. */
import { finding, type Finding } from '../../records/finding.ts';
import { nearestWord } from '../../records/nearest-word.ts';
import { interfaceLanguages, isSpoken } from '../../words/locale.ts';
import type { ContentResult } from '../content.ts';

export function collectionFindings(content: Omit<ContentResult, 'findings'>): Finding[] {
  const { collection, plates, pages } = content;
  const slugs = plates.map((plate) => plate.slug);
  const findings: Finding[] = [];
  const unknownPlate = (file: string, field: string, slug: string) => {
    const near = nearestWord(slug, slugs);
    const remedy = near ? `Did you mean "${near}"?` : 'Correct the name, or take the field out.';
    const message = `"${field}" names the plate "${slug}", but there is no such plate.`;
    const about = { level: 'warning', plate: '', file, code: 'unknown-plate' } as const;
    findings.push(finding({ ...about, field, message, remedy }));
  };
  if (collection?.opening !== undefined && !slugs.includes(collection.opening)) {
    unknownPlate('collection.md', 'opening', collection.opening);
  }
  for (const { file, record } of pages) {
    const { example } = record;
    if (example && !slugs.includes(example.plate)) unknownPlate(file, 'example.plate', example.plate);
  }
  if (slugs.length === 0) {
    const message = 'There is no plate in plates/.';
    const remedy = 'Make one from a folder of photographs: npm run new -- SLUG --from FOLDER.';
    findings.push(finding({ level: 'warning', plate: '', code: 'no-plates', message, remedy }));
  }
  findings.push(...unspoken(collection?.languages ?? []));
  return [...findings, ...sharedNumbers(plates), ...formerTaken(plates)];
}

function sharedNumbers(plates: ContentResult['plates']): Finding[] {
  const first = new Map<string, string>();
  return plates.flatMap(({ slug, record }) => {
    const number = record?.objectNumber;
    if (number === undefined) return [];
    const other = first.get(number);
    if (other === undefined) {
      first.set(number, slug);
      return [];
    }
    const message = `The object number "${number}" is also that of plate "${other}".`;
    const about = { level: 'warning', plate: slug, file: 'plate.md', code: 'number-twice' } as const;
    return [finding({ ...about, message, remedy: 'Correct one of the two.' })];
  });
}

/** Its own texts can be in any language; the words around them come from the program. */
function unspoken(languages: readonly string[]): Finding[] {
  const about = { level: 'warning', plate: '', file: 'collection.md', code: 'unspoken-language' } as const;
  return languages.flatMap((language, k) => {
    if (isSpoken(language)) return [];
    const message = `There are no words of the interface for the language "${language}"; English ones stand in its pages.`;
    const remedy = `Take one of ${interfaceLanguages.map((tag) => `"${tag}"`).join(', ')}, or keep it for your own texts.`;
    return [finding({ ...about, field: `languages.${k}`, message, remedy })];
  });
}

/** A former slug that is taken leads nowhere: the plate that has it now keeps the address. */
function formerTaken(plates: ContentResult['plates']): Finding[] {
  const owners = new Map(plates.map(({ slug }) => [slug, slug]));
  return plates.flatMap(({ slug, record }) =>
    (record?.formerly ?? []).flatMap((former, k) => {
      const owner = owners.get(former);
      if (owner === undefined) {
        owners.set(former, slug);
        return [];
      }
      const message = `"${former}" is said to be a former address, but plate "${owner}" has it.`;
      const remedy = 'Take it out of "formerly"; an address can lead to one plate only.';
      const about = { level: 'warning', plate: slug, file: 'plate.md', code: 'address-taken' } as const;
      return [finding({ ...about, field: `formerly.${k}`, message, remedy })];
    }),
  );
}
