/**
 * A plate's records without what is withheld: a deposit that leaves a capture out must not name
 * it either. Everything else stays as the museum wrote it, comments included.
 */
import { isMap, isSeq, parseDocument, type Document } from 'yaml';

const id = (item: unknown) => (isMap(item) ? item.get('id') : undefined);

/** A sitting's YAML without the captures of these ids. */
export function sittingWithout(text: string, withheld: readonly string[]): string {
  if (withheld.length === 0) return text;
  const document = parseDocument(text);
  const captures = document.get('captures');
  if (isSeq(captures)) {
    captures.items = captures.items.filter((item) => !withheld.includes(String(id(item))));
  }
  return String(document);
}

/** `plate.md` without the list of what is withheld, and without looks and spots that show it. */
export function plateTextWithout(text: string, withheld: readonly string[]): string {
  const found = /^(\uFEFF?---\r?\n)([\s\S]*?)(\r?\n---)/.exec(text);
  if (withheld.length === 0 || !found) return text;
  const document = parseDocument(found[2]);
  document.delete('withheld');
  const named = (item: unknown) =>
    withheld.some((name) => new RegExp(`\\b${name}\\b`).test(JSON.stringify(item)));
  dropItems(document, 'spots', (item) =>
    withheld.includes(String(isMap(item) && item.get('view'))),
  );
  for (const look of items(document, 'looks')) {
    if (!isMap(look)) continue;
    const steps = look.get('steps');
    if (isSeq(steps))
      steps.items = steps.items.filter((step) => !named(isMap(step) && step.get('of')));
  }
  return found[1] + String(document).trimEnd() + found[3] + text.slice(found[0].length);
}

function items(document: Document, name: string): unknown[] {
  const list = document.get(name);
  return isSeq(list) ? list.items : [];
}

function dropItems(document: Document, name: string, drop: (item: unknown) => boolean): void {
  const list = document.get(name);
  if (isSeq(list)) list.items = list.items.filter((item) => !drop(item));
}
