/**
 * "Did you mean ...": the known word that a mistyped one is nearest to.
 *
 * References
 * - Damerau, F. J. (1964). A technique for computer detection and correction of spelling
 *   errors. Communications of the ACM 7(3), 171-176. doi:10.1145/363958.363994 (from memory)
 */

/**
 * Edits that turn one word into the other: letters added, left out, exchanged, or two
 * neighbours swapped (each place edited once: the "optimal string alignment" form).
 */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1];
      const swapped =
        row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      current[column] = Math.min(
        last[column] + 1,
        current[column - 1] + 1,
        last[column - 1] + (same ? 0 : 1),
        swapped ? beforeLast[column - 2] + 1 : Infinity,
      );
    }
    beforeLast = last;
    last = current;
  }
  return last[b.length];
}

/** Letters and digits alone, so that `object_number` is as near to `objectNumber` as can be. */
function plain(word: string): string {
  return word.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}

/** The nearest known word, or null when none is near: more than a third of the letters differ. */
export function nearestWord(word: string, known: readonly string[]): string | null {
  const asked = plain(word.slice(0, 60));
  let best: string | null = null;
  let fewest = Math.max(1, Math.floor(asked.length / 3)) + 1;
  for (const candidate of known) {
    const edits = editDistance(asked, plain(candidate));
    if (edits < fewest) {
      best = candidate;
      fewest = edits;
    }
  }
  return best;
}
