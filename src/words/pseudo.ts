/**
 * Words for a test: each is set between ⟦ and ⟧, also what functions return, so that whatever
 * stands on a page without the marks has not gone through the words of a language.
 */

/** A copy of an object of words with every text marked. */
export function marked<T>(words: T): T {
  return mark(words) as T;
}

function mark(value: unknown): unknown {
  if (typeof value === 'string') return value === '' ? value : `⟦${value}⟧`;
  if (typeof value === 'function') {
    const said = value as (...given: unknown[]) => unknown;
    return (...given: unknown[]) => mark(said(...given));
  }
  if (Array.isArray(value)) return value.map(mark);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, mark(part)]));
}
