/** One measured figure of `npm run bench`. Names are stable, since figures are compared over time. */
export interface BenchRow {
  readonly group: string;
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** What ran beside it in the same run, and its own value; null where nothing did. */
  readonly reference: { readonly name: string; readonly value: number } | null;
  /** The figure aimed at; null where there is none. */
  readonly goal: number | null;
  readonly better: 'lower' | 'higher';
}

/** A figure of which less is better. */
export function lower(
  group: string,
  name: string,
  unit: string,
  value: number,
  goal: number | null,
  reference: BenchRow['reference'] = null,
): BenchRow {
  return { group, name, value, unit, reference, goal, better: 'lower' };
}
