/**
 * How a camera's linear signal scatters: photons as Poisson, electronics as a constant, and the
 * steps of the file's codes on top.
 *
 * References
 * - EMVA Standard 1288, linear camera model: variance = dark variance + gain x signal.
 * - Hasinoff, S. W., Durand, F. and Freeman, W. T. (2010). Noise-optimal capture for high dynamic
 *   range photography. Proc. CVPR 2010, 553-560. doi:10.1109/CVPR.2010.5540167
 */

/** Linear signal: 0 for black, 1 for what the file's largest code stands for. */
export interface SignalNoise {
  /** Variance that each unit of signal brings: 1 / electrons at signal 1. */
  readonly gain: number;
  /** Variance in the dark. */
  readonly darkVariance: number;
}

/** Variance of a sample whose true signal is known. */
export function signalVariance(noise: SignalNoise, signal: number): number {
  return noise.gain * Math.max(0, signal) + noise.darkVariance;
}

/**
 * Variance of rounding to codes: a twelfth of the squared step, at each code.
 *
 * @param signals Linear signal of every code, ascending.
 */
export function roundingVariance(signals: ArrayLike<number>): (signal: number) => number {
  const last = signals.length - 1;
  return (signal) => {
    let [low, high] = [0, last];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (signals[middle] <= signal) low = middle;
      else high = middle;
    }
    const step = signals[high] - signals[low];
    return (step * step) / 12;
  };
}
