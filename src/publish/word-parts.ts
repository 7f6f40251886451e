/**
 * The index of words of a large exhibit is in parts, so that one changed plate does not mean
 * reading all pages again: each plate's pages are in one of them, all other pages in the index
 * itself. A reader's search asks all parts at once.
 */

/** Plates in one part. A part costs whoever searches some 90 kB before its first answer. */
const platesInPart = 1000;

/** Number of parts; none for an exhibit whose plates are in the index itself. */
export function wordParts(plates: number): number {
  return plates <= platesInPart ? 0 : Math.ceil(plates / platesInPart);
}

/** The part that a plate's pages are in: the same one whatever other plates there are (FNV-1a). */
export function wordPartOf(slug: string, parts: number): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < slug.length; at += 1) {
    hash = Math.imul(hash ^ slug.charCodeAt(at), 0x01000193) >>> 0;
  }
  return hash % parts;
}

/** Folder of a part within that of the index. */
export const wordPartFolder = (part: number): string => `part-${part}`;
