/** Strips of the frames of a many-light set to codes of its component planes. */
import type { Components } from './components.ts';
import { domainTable } from './light-domain.ts';
import type { PlaneCoding } from './plane-coding.ts';
import { projectionKernel } from './projection-kernel.ts';

/** Pixels of one run of the kernel: their values fit the processor's second cache. */
const tile = 64;

/**
 * @returns A function that takes the display codes of `pixels` pixels of each frame, channels
 *   interleaved, and writes their codes of plane k to `out` at `k * pixels`.
 */
export function frameProjector(
  components: Components,
  coding: PlaneCoding,
): (frames: readonly Uint8Array[], pixels: number, out: Uint8Array) => void {
  const planes = coding.step.length;
  const { variables, mean, vectors } = components;
  const table = Float32Array.from(domainTable(components.domain));
  // Codes come out of the kernel directly: step and offset are folded into weights and bias.
  const weights = new Float64Array(variables * planes);
  const bias = new Float64Array(planes);
  for (let k = 0; k < planes; k += 1) {
    bias[k] = 0.5 - coding.offset[k] / coding.step[k];
    for (let j = 0; j < variables; j += 1) {
      weights[j * planes + k] = vectors[k][j] / coding.step[k];
      bias[k] -= weights[j * planes + k] * mean[j];
    }
  }
  const kernel = projectionKernel(weights, variables, planes, tile);
  return (frames, pixels, out) => {
    for (let from = 0; from < pixels; from += tile) {
      const count = Math.min(tile, pixels - from);
      frames.forEach((frame, l) => {
        fill(kernel.values, frame, table, from, count, 3 * l, variables);
      });
      kernel.run();
      for (let k = 0; k < planes; k += 1) {
        for (let p = 0, at = k * pixels + from, s = k; p < count; p += 1, s += kernel.stride) {
          const code = kernel.sums[s] + bias[k];
          out[at + p] = code < 0 ? 0 : code > 255 ? 255 : code;
        }
      }
    }
  };
}

/** Values of one frame's pixels, at their place among the variables. */
function fill(
  values: Float32Array,
  frame: Uint8Array,
  table: Float32Array,
  from: number,
  count: number,
  variable: number,
  variables: number,
): void {
  let at = variable;
  for (let s = from * 3, end = (from + count) * 3; s < end; s += 3, at += variables) {
    values[at] = table[frame[s]];
    values[at + 1] = table[frame[s + 1]];
    values[at + 2] = table[frame[s + 2]];
  }
}
