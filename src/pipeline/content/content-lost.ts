/**
 * Whether a content folder is there to be believed. A disk that was not mounted, or a network
 * folder that went away, looks like a museum without plates: nothing may be cleaned up after it,
 * and no exhibit may take the place of the one that is there.
 */
import type { ContentResult } from '../content.ts';

/** Codes of findings about whole folders, and about the collection's own texts. */
const lost: ReadonlySet<string> = new Set(['no-content', 'unreadable']);

/** Why it is not, as the end of a sentence; null where it is. */
export function contentLost({ collection, plates, findings }: ContentResult): string | null {
  if (findings.some(({ plate, code }) => plate === '' && lost.has(code))) {
    return 'it could not be read as a whole (see above)';
  }
  if (collection === null && plates.length === 0) {
    return 'it has neither collection.md nor a plate';
  }
  return null;
}
