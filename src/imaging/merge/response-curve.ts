/**
 * The response of a camera from a bracket: what light each code of an encoded file stands for,
 * when no profile says so. Each place of the scene is one unknown light seen at several known
 * exposures; the curve is the one under which they agree, as smooth as the data let it be.
 *
 * The unknown lights are eliminated one by one, so that thousands of places cost little more than
 * a few dozen: what is solved has one unknown for each node of the curve.
 *
 * References
 * - Debevec, P. and Malik, J. (1997). Recovering high dynamic range radiance maps from
 *   photographs. Proc. SIGGRAPH 97, 369-378. doi:10.1145/258734.258884 (equation 3; hat weights
 *   of equation 4).
 */
import type { Estimate } from '../plane.ts';
import { solveInPlace } from '../registration/linear-system.ts';

export interface ResponseOptions {
  /** Weight of the second differences for each place; larger for noisier places. */
  readonly smoothness?: number;
}

/** Nodes of the curve: codes of 8 bits. */
const nodes = 256;
/** Chosen on one rendered bracket: from 1 to 10 the error stays within a factor of two. */
const usualSmoothness = 3;
const middle = 128;
const fewestPlaces = 50;

/** Rises from the darkest code to the middle and falls to the brightest: the ends are least sure. */
const hat = Float64Array.from({ length: nodes }, (_, z) => (z < middle ? z : nodes - 1 - z) / 127);

/**
 * @param places For each place the codes of all frames, 0 to 255.
 * @param seconds Exposure of each frame.
 * @returns Relative exposure that each code stands for: ascending, 1 at code 128.
 */
export function recoverResponse(
  places: readonly ArrayLike<number>[],
  seconds: readonly number[],
  { smoothness = usualSmoothness }: ResponseOptions = {},
): Estimate<Float64Array> {
  if (places.length < fewestPlaces) {
    return {
      ok: false,
      reason: `only ${places.length} places are even enough to tell the camera's response`,
    };
  }
  const matrix = new Float64Array(nodes * nodes);
  const right = new Float64Array(nodes);
  const logs = seconds.map((t) => Math.log(t));
  for (const codes of places) addPlace(codes, logs, matrix, right);
  // Smoothness, weighed as the codes are, and enough of it where no place has a code.
  for (let z = 1; z < nodes - 1; z += 1) {
    const w = smoothness * places.length * Math.max(hat[z], 0.02) ** 2 + 1e-3;
    for (const [a, p] of secondDifference) {
      for (const [b, q] of secondDifference) matrix[(z + a) * nodes + z + b] += w * p * q;
    }
  }
  // The scale of the light is free: code 128 is one.
  matrix[middle * nodes + middle] += places.length;
  const logCurve = solveInPlace(matrix, right, 1e-14);
  if (!logCurve) return { ok: false, reason: 'the exposures are alike and tell no curve' };
  const anchor = logCurve[middle];
  const curve = logCurve.map((g) => Math.exp(g - anchor));
  for (let z = 1; z < nodes; z += 1) curve[z] = Math.max(curve[z], curve[z - 1] * (1 + 1e-9));
  return { ok: true, value: curve };
}

const secondDifference = [
  [-1, 1],
  [0, -2],
  [1, 1],
] as const;

/** One place's equations, w (g(z) - ln E - ln t) = 0, with its light E eliminated. */
function addPlace(
  codes: ArrayLike<number>,
  logs: readonly number[],
  matrix: Float64Array,
  right: Float64Array,
): void {
  let [sum, sumLog] = [0, 0];
  for (let k = 0; k < logs.length; k += 1) {
    const w = hat[codes[k]] ** 2;
    sum += w;
    sumLog += w * logs[k];
  }
  if (sum === 0) return;
  for (let k = 0; k < logs.length; k += 1) {
    const w = hat[codes[k]] ** 2;
    if (w === 0) continue;
    const row = codes[k] * nodes;
    matrix[row + codes[k]] += w;
    right[codes[k]] += w * (logs[k] - sumLog / sum);
    for (let j = 0; j < logs.length; j += 1) {
      matrix[row + codes[j]] -= (w * hat[codes[j]] ** 2) / sum;
    }
  }
}

/**
 * A table of signals for every code of a file, 1 at the largest, from a recovered response.
 *
 * @param depth Of the file; between the nodes of 16-bit codes the logarithm is joined by lines.
 */
export function responseTable(response: Float64Array, depth: 8 | 16): Float32Array {
  const top = response[nodes - 1];
  if (depth === 8) return Float32Array.from(response, (v) => v / top);
  return Float32Array.from({ length: 65536 }, (_, code) => {
    const at = (code / 65535) * (nodes - 1);
    const low = Math.min(nodes - 2, Math.floor(at));
    return (response[low] * (response[low + 1] / response[low]) ** (at - low)) / top;
  });
}
