/** The figures of the alignment bench from its pairs. */
import type { PairResult } from './worker.ts';

/** Nearest-rank quantile of a list, NaN for an empty one. */
export function quantile(values: readonly number[], share: number): number {
  if (values.length === 0) return NaN;
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)];
}

export interface AlignFigures {
  readonly ordinaryMedian: number;
  readonly ordinaryP95: number;
  readonly ordinaryAcceptedShare: number;
  readonly weakMedian: number;
  readonly weakAcceptedShare: number;
  readonly worstAccepted: number;
  /** Of the flipped pairs that were accepted and of all foreign ones: lay named, or refused. */
  readonly flipsCaughtShare: number;
  /** Of the accepted pairs: true error at most the published bound. */
  readonly boundHeldShare: number;
  /** Of the accepted pairs: opposite tones told. */
  readonly polarityRightShare: number;
}

export function alignFigures(results: readonly PairResult[]): AlignFigures {
  const of = (kind: string) => results.filter((r) => r.kind === kind);
  const errors = (list: readonly PairResult[]) =>
    list.flatMap((r) => (r.accepted && r.error !== null ? [r.error] : []));
  const share = (list: readonly PairResult[], test: (r: PairResult) => boolean) =>
    list.filter(test).length / list.length;
  const accepted = results.filter((r) => r.accepted && r.kind !== 'foreign');
  const toCatch = [...accepted.filter((r) => r.flipped), ...of('foreign')];
  return {
    ordinaryMedian: quantile(errors(of('ordinary')), 0.5),
    ordinaryP95: quantile(errors(of('ordinary')), 0.95),
    ordinaryAcceptedShare: share(of('ordinary'), (r) => r.accepted),
    weakMedian: quantile(errors(of('weak')), 0.5),
    weakAcceptedShare: share(of('weak'), (r) => r.accepted),
    worstAccepted: Math.max(...errors(accepted)),
    flipsCaughtShare: share(toCatch, (r) =>
      r.kind === 'foreign' ? !r.accepted : r.layRight === true,
    ),
    boundHeldShare: share(accepted, (r) => (r.error ?? Infinity) <= (r.bound ?? 0)),
    polarityRightShare: share(accepted, (r) => r.polarity === 'opposite'),
  };
}
