/** From the line spread across an edge to how much of each fineness is kept (`slanted-edge.ts`). */

export interface EdgeResponse {
  /** Frequencies in cycles per pixel, measured across the edge, from 0 to 1. */
  readonly frequency: Float64Array;
  /** Modulation, 1 at frequency 0. */
  readonly modulation: Float64Array;
  /** Frequency where the modulation first falls to a half, and to a tenth; NaN above 1. */
  readonly mtf50: number;
  readonly mtf10: number;
  /** Modulation at half the sampling frequency, 0.5 cycles per pixel. */
  readonly atHalfSampling: number;
  /** Largest modulation anywhere: above 1 the picture was sharpened. */
  readonly maximum: number;
  /** Degrees between the edge and the nearer pixel axis. */
  readonly angleDegrees: number;
}

/** Values of the line spread a pixel. */
export const oversampling = 4;
const frequencyStep = 1 / 512;

/** @param spread The line spread across the edge, `oversampling` values a pixel. */
export function responseOf(spread: Float64Array): Omit<EdgeResponse, 'angleDegrees'> {
  const count = 1 / frequencyStep + 1;
  const frequency = new Float64Array(count);
  const modulation = new Float64Array(count);
  let zero = 1;
  for (let k = 0; k < count; k += 1) {
    const f = k * frequencyStep;
    const turn = (2 * Math.PI * f) / oversampling;
    let re = 0;
    let im = 0;
    for (let n = 0; n < spread.length; n += 1) {
      re += spread[n] * Math.cos(turn * n);
      im += spread[n] * Math.sin(turn * n);
    }
    // Averaging in a bin and taking the difference of two each cost one sinc.
    const lost = sinc(f / oversampling) ** 2;
    const size = Math.hypot(re, im) / lost;
    if (k === 0) zero = size;
    frequency[k] = f;
    modulation[k] = size / zero;
  }
  return {
    frequency,
    modulation,
    mtf50: firstBelow(frequency, modulation, 0.5),
    mtf10: firstBelow(frequency, modulation, 0.1),
    atHalfSampling: modulation[Math.round(0.5 / frequencyStep)],
    maximum: modulation.reduce((top, m, k) => (frequency[k] <= 0.5 ? Math.max(top, m) : top), 0),
  };
}

function firstBelow(frequency: Float64Array, modulation: Float64Array, level: number): number {
  for (let k = 1; k < modulation.length; k += 1) {
    if (modulation[k] > level) continue;
    const share = (modulation[k - 1] - level) / (modulation[k - 1] - modulation[k]);
    return frequency[k - 1] + share * frequencyStep;
  }
  return NaN;
}

function sinc(x: number): number {
  return x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
}
