/**
 * Dividing the plates of a collection among machines. Each computes the same division from the
 * same content alone, so they need not talk: plates by falling cost, each to the share that has
 * least so far (Graham 1969: at most 4/3 of the best possible).
 *
 * References
 * - Graham, R. L. (1969). Bounds on multiprocessing timing anomalies. SIAM Journal on Applied
 *   Mathematics 17, 416-429.
 */

export interface Share {
  /** From 1. */
  readonly part: number;
  readonly of: number;
}

export interface Costed {
  readonly slug: string;
  /** Any measure of work that every machine finds the same: bytes of the captures. */
  readonly cost: number;
}

/** Slugs of the plates that fall to one share. */
export function shareOf(plates: readonly Costed[], { part, of }: Share): ReadonlySet<string> {
  const loads = Array.from({ length: of }, () => 0);
  const mine = new Set<string>();
  const ordered = [...plates].sort((a, b) => b.cost - a.cost || (a.slug < b.slug ? -1 : 1));
  for (const { slug, cost } of ordered) {
    const least = loads.indexOf(Math.min(...loads));
    loads[least] += cost;
    if (least === part - 1) mine.add(slug);
  }
  return mine;
}
