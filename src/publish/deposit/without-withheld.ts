/**
 * A plate's records without what is withheld: a deposit that leaves a capture out must not name
 * it either, in a field, in a sentence or in a comment. Everything else stays as it was written.
 */
import { isMap, isSeq, parseDocument, type Document } from 'yaml';
import type { VeiledParts } from '../../records/veiled-parts.ts';

export interface Withheld {
  readonly ids: readonly string[];
  /** Ids, and the names of their files. */
  readonly names: readonly string[];
  /** Spots and steps that show them. */
  readonly veiled: VeiledParts;
}

const idOf = (item: unknown) => (isMap(item) ? String(item.get('id')) : '');

/** A sitting's YAML without the captures of these ids. */
export function sittingWithout(text: string, { ids, names }: Omit<Withheld, 'veiled'>): string {
  if (ids.length === 0) return text;
  const document = parseDocument(text);
  dropItems(document, 'captures', (item) => ids.includes(idOf(item)));
  return unnamed(String(document), names);
}

/** `plate.md`, or a translation of it, without the list of what is withheld and what shows it. */
export function plateTextWithout(text: string, { ids, names, veiled }: Withheld): string {
  const found = /^(\uFEFF?---\r?\n)([\s\S]*?)(\r?\n---)/.exec(text);
  if (ids.length === 0 || !found) return text;
  const document = parseDocument(found[2]);
  document.delete('withheld');
  dropItems(document, 'spots', (item) => veiled.spots.has(idOf(item)));
  dropItems(document, 'looks', (item) => veiled.looks.has(idOf(item)));
  const looks = document.get('looks');
  for (const look of isSeq(looks) ? looks.items : []) {
    const steps = isMap(look) ? look.get('steps') : null;
    const hidden = veiled.steps.get(idOf(look));
    if (isSeq(steps)) steps.items = steps.items.filter((_, n) => !hidden?.has(n));
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
