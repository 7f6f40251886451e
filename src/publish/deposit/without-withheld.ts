/**
 * A plate's records without what is withheld: a deposit that leaves a capture out must not name
 * it either, in a field, in a sentence or in a comment. Everything else stays as it was written.
 */
import { isMap, isSeq, parseDocument, type Document } from 'yaml';

export interface Withheld {
  readonly ids: readonly string[];
  /** Ids, and the names of their files. */
  readonly names: readonly string[];
}

const idOf = (item: unknown) => (isMap(item) ? String(item.get('id')) : '');

/** A sitting's YAML without the captures of these ids. */
export function sittingWithout(text: string, { ids, names }: Withheld): string {
  if (ids.length === 0) return text;
  const document = parseDocument(text);
  dropItems(document, 'captures', (item) => ids.includes(idOf(item)));
  return unnamed(String(document), names);
}

/** `plate.md` without the list of what is withheld, and without spots and steps that show it. */
export function plateTextWithout(text: string, { ids, names }: Withheld): string {
  const found = /^(\uFEFF?---\r?\n)([\s\S]*?)(\r?\n---)/.exec(text);
  if (ids.length === 0 || !found) return text;
  const document = parseDocument(found[2]);
  document.delete('withheld');
  dropItems(document, 'spots', (item) => isMap(item) && ids.includes(String(item.get('view'))));
  const looks = document.get('looks');
  for (const look of isSeq(looks) ? looks.items : []) {
    const steps = isMap(look) ? look.get('steps') : null;
    if (!isSeq(steps)) continue;
    steps.items = steps.items.filter((step) => {
      const of = isMap(step) ? step.get('of') : null;
      const shown = isSeq(of) ? of.items.map(String) : [];
      return !shown.some((id) => ids.includes(id));
    });
  }
  const head = String(document).trimEnd();
  return unnamed(found[1] + head + found[3] + text.slice(found[0].length), names);
}

function dropItems(document: Document, name: string, drop: (item: unknown) => boolean): void {
  const list = document.get(name);
  if (isSeq(list)) list.items = list.items.filter((item) => !drop(item));
}

/** Comments that name it go, and a sentence that does says that something was left out. */
function unnamed(text: string, names: readonly string[]): string {
  const escaped = names.map((name) => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  const named = new RegExp(`(?<![\\w-])(?:${escaped.join('|')})(?![\\w-])`, 'g');
  return text
    .split('\n')
    .flatMap((line) => {
      if (line.search(named) < 0) return line;
      const comment = /(^|\s)#.*$/.exec(line);
      if (comment && comment[0].search(named) >= 0) {
        const rest = line.slice(0, comment.index).trimEnd();
        return rest === '' ? [] : rest;
      }
      return line.replace(named, '[left out]');
    })
    .join('\n');
}
