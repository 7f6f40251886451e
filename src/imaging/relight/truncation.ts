/** What it costs to keep only the first components of a many-light set, in display codes. */
import type { Components } from './components.ts';
import type { LampWeights } from './lamp-weights.ts';
import { typicalError } from './leave-one-out.ts';
import { domainTable, fromDomain } from './light-domain.ts';
import type { LightSample } from './light-sample.ts';

export interface TruncationCost {
  /** Mean square error of the frames put together again from the kept components. */
  readonly kept: number;
  /** Mean square error of frames foretold from the others, all put together from the kept. */
  readonly leftOut: number;
}

/** Both errors with the first `planes` components. */
export function truncationCost(
  sample: LightSample,
  components: Components,
  weights: LampWeights,
  planes: number,
  judged: readonly number[],
): TruncationCost {
  const { lamps, pixels, codes } = sample;
  const { variables, mean, domain } = components;
  const vectors = components.vectors.slice(0, planes);
  const table = domainTable(domain);
  const code = (v: number): number => fromDomain(domain, v);
  const centred = new Float64Array(variables);
  const again = new Float64Array(variables);
  let kept = 0;
  const sums = new Float64Array(judged.length);
  for (let p = 0; p < pixels; p += 1) {
    const at = p * variables;
    for (let j = 0; j < variables; j += 1) centred[j] = table[codes[at + j]] - mean[j];
    again.set(mean);
    for (const vector of vectors) {
      let along = 0;
      for (let j = 0; j < variables; j += 1) along += vector[j] * centred[j];
      for (let j = 0; j < variables; j += 1) again[j] += along * vector[j];
    }
    for (let j = 0; j < variables; j += 1) kept += (code(again[j]) - codes[at + j]) ** 2;
    for (let n = 0; n < judged.length; n += 1) {
      const i = judged[n];
      const pivot = weights.residual[i * lamps + i];
      for (let c = 0; c < 3; c += 1) {
        let miss = 0;
        for (let l = 0; l < lamps; l += 1) {
          miss += weights.residual[i * lamps + l] * again[3 * l + c];
        }
        const foretold = code(again[3 * i + c] - miss / pivot);
        sums[n] += (foretold - codes[at + 3 * i + c]) ** 2;
      }
    }
  }
  return { kept: kept / (pixels * variables), leftOut: typicalError(sums, pixels * 3) };
}
