/** What can be wrong with a translation as a whole: its name, its parts, what it leaves out. */
import { finding, type Finding } from '../../records/finding.ts';
import { nearestWord } from '../../records/nearest-word.ts';
import type { PlaceOf } from '../../records/yaml-door.ts';

interface About {
  readonly plate: string;
  readonly file: string;
  readonly language: string;
}
interface Name extends About {
  readonly original: string;
  /** Names of the originals in the same folder. */
  readonly there: readonly string[];
  /** Null where collection.md cannot be read. */
  readonly languages: readonly string[] | null;
}

function name({ plate, file, language, original, there, languages }: Name): Finding | null {
  const about = { level: 'warning', plate, file } as const;
  if (!there.includes(original)) {
    const near = nearestWord(original, there);
    const message = `${file} would be a translation of ${original}, which is not there or cannot be read.`;
    const remedy = near
      ? `Did you mean "${near.replace(/md$/, `${language}.md`)}"?`
      : 'Write the original first, or take the file out.';
    return finding({ ...about, code: 'no-original', message, remedy });
  }
  if (languages === null) return null;
  if (language === languages[0]) {
    const message = `"${language}" is the first language of collection.md, in which ${original} itself is written.`;
    const remedy = `Put the text into ${original}, or correct the language in the file's name.`;
    return finding({ ...about, code: 'original-language', message, remedy });
  }
  if (languages.includes(language)) return null;
  const message = `collection.md does not list the language "${language}"; it lists ${languages.map((tag) => `"${tag}"`).join(', ')}.`;
  const near = nearestWord(language, languages.slice(1));
  const remedy = near
    ? `Did you mean "${near}"? Otherwise add "${language}" to "languages".`
    : `Add "${language}" to "languages" in collection.md; until then the text is not shown.`;
  return finding({ ...about, code: 'unlisted-language', message, remedy });
}

function stray(
  path: readonly PropertyKey[],
  overlay: object,
  { plate, file, placeOf }: About & { readonly placeOf: PlaceOf },
): Finding {
  const field = path.map(String).join('.');
  const entry = path.reduce<unknown>(
    (value, key) => (value as Record<PropertyKey, unknown>)[key],
    overlay,
  );
  const { id, term } = Object(entry) as { id?: string; term?: string };
  const called = id ?? term;
  return finding({
    level: 'warning',
    plate,
    file,
    ...placeOf(path),
    field,
    code: 'nothing-to-translate',
    message: `"${field}"${called ? ` ("${called}")` : ''} translates something that the original does not have.`,
    remedy: 'Add it to the original first, or correct its name or place; it is not shown.',
  });
}

/** Both readings of a plate are described in words; a reader of this language has them in another. */
function alternatives(
  original: object,
  translated: ReadonlySet<string>,
  { plate, file, language }: About,
): Finding[] {
  if (!('description' in original)) return [];
  return (['positive', 'negative'] as const)
    .filter((reading) => !translated.has(`description.${reading}`))
    .map((reading) =>
      finding({
        level: 'warning',
        plate,
        file,
        field: `description.${reading}`,
        code: 'alternative-not-translated',
        message: `The text alternative of the ${reading} reading is not translated into "${language}".`,
        remedy: `Write description.${reading} in ${file}; until then readers hear the original.`,
      }),
    );
}

export const overlayFindings = { name, stray, alternatives };
