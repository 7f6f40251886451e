/**
 * Components as bytes. Each plane has its own range; a weak plane's range is widened to the
 * geometric mean of its own and the first one's, so that it takes fewer steps and costs fewer
 * bytes, as it matters less to the picture.
 */
import type { Components } from './components.ts';
import { domainTable } from './light-domain.ts';
import type { LightSample } from './light-sample.ts';

export interface PlaneCoding {
  /** Code c of plane k stands for `offset[k] + step[k] * c`. */
  readonly offset: readonly number[];
  readonly step: readonly number[];
}

/** Values outside those of the sample are to be expected among a thousand times as many pixels. */
const margin = 0.1;

export function planeCoding(
  sample: LightSample,
  components: Components,
  planes: number,
): PlaneCoding {
  const { variables, mean, domain } = components;
  const table = domainTable(domain);
  const low = new Float64Array(planes).fill(Infinity);
  const high = new Float64Array(planes).fill(-Infinity);
  const centred = new Float64Array(variables);
  for (let p = 0; p < sample.pixels; p += 1) {
    for (let j = 0; j < variables; j += 1) {
      centred[j] = table[sample.codes[p * variables + j]] - mean[j];
    }
    for (let k = 0; k < planes; k += 1) {
      const vector = components.vectors[k];
      let along = 0;
      for (let j = 0; j < variables; j += 1) along += vector[j] * centred[j];
      low[k] = Math.min(low[k], along);
      high[k] = Math.max(high[k], along);
    }
  }
  const own = Array.from(low, (from, k) => Math.max(1e-9, (high[k] - from) * (1 + 2 * margin)));
  const range = own.map((width) => Math.max(width, Math.sqrt(width * own[0])));
  return {
    offset: range.map((width, k) => (low[k] + high[k] - width) / 2),
    step: range.map((width) => width / 255),
  };
}
