/**
 * The noise of a camera from the bracket that it took, when nobody has measured it: two frames
 * of one still scene differ, after scaling by their exposures, by noise alone. The variance of
 * that difference against the mean is a straight line, whose slope and start are the sensor's.
 *
 * References
 * - Janesick, J. R. (2007). Photon Transfer. SPIE Press (variance against mean of frame
 *   differences). doi:10.1117/3.725073 (DOI from memory).
 * - Foi, A. et al. (2008). Practical Poissonian-Gaussian noise modeling and fitting for
 *   single-image raw-data. IEEE Trans. Image Processing 17(10), 1737-1754.
 *   doi:10.1109/TIP.2008.2001399
 */
import { robustDeviation } from '../inspect/quantile.ts';
import type { Estimate } from '../plane.ts';
import type { FrameSignals } from './exposure-times.ts';
import type { SignalNoise } from './signal-noise.ts';

export interface NoiseOptions {
  readonly clip: number;
  /** Variance of the rounding to codes, which is not the sensor's. */
  readonly rounding?: (signal: number) => number;
}

interface Bin {
  /** Factors of gain and of dark variance in the variance of the difference. */
  readonly perGain: number;
  readonly perDark: number;
  readonly variance: number;
  readonly samples: number;
}

const binsPerOctave = 2;
const fewestInBin = 60;
/** Bins from this signal of the shorter frame up; below, black clipped at zero folds the noise. */
const darkest = 2 ** -12;
/** Ratio of a normal law's variance to what rounding leaves visible: bins narrower than rounding are left out. */
const leastAboveRounding = 0.5;

/**
 * @param frames Signals of the same places in every frame, aligned. @param seconds True times.
 * @returns The noise of one sample; not ok where the frames share too little light.
 */
export function noiseFromFrames(
  frames: FrameSignals,
  seconds: readonly number[],
  options: NoiseOptions,
): Estimate<SignalNoise> {
  const order = seconds.map((_, k) => k).sort((a, b) => seconds[a] - seconds[b]);
  const bins = order
    .slice(1)
    .flatMap((longer, i) => differenceBins(frames, seconds, order[i], longer, options));
  if (bins.length < 4) {
    return { ok: false, reason: 'the frames share too little light to tell their noise' };
  }
  return fitLine(bins);
}

function differenceBins(
  frames: FrameSignals,
  seconds: readonly number[],
  shorter: number,
  longer: number,
  { clip, rounding = () => 0 }: NoiseOptions,
): Bin[] {
  const [first, second] = [frames[shorter], frames[longer]];
  const ratio = seconds[longer] / seconds[shorter];
  const found = new Map<number, number[]>();
  for (let i = 0; i < first.length; i += 1) {
    if (first[i] >= clip || second[i] >= clip) continue;
    const mean = (first[i] + second[i]) / (1 + ratio);
    if (mean < darkest || mean * ratio > 0.9 * clip) continue;
    const bin = Math.floor(Math.log2(mean) * binsPerOctave);
    const list = found.get(bin);
    if (list) list.push(second[i] - ratio * first[i]);
    else found.set(bin, [second[i] - ratio * first[i]]);
  }
  return [...found].flatMap(([bin, differences]): Bin[] => {
    if (differences.length < fewestInBin) return [];
    const mean = 2 ** ((bin + 0.5) / binsPerOctave);
    const measured = robustDeviation(differences) ** 2;
    const steps = ratio * ratio * rounding(mean) + rounding(mean * ratio);
    const variance = measured - steps;
    if (variance < leastAboveRounding * steps || variance <= 0) return [];
    return [
      {
        perGain: mean * ratio * (1 + ratio),
        perDark: 1 + ratio * ratio,
        variance,
        samples: differences.length,
      },
    ];
  });
}

/** Weighted least squares for two unknowns that cannot be negative. */
function fitLine(bins: readonly Bin[]): Estimate<SignalNoise> {
  let weights = bins.map((b) => b.samples / b.variance ** 2);
  let result = { gain: 0, darkVariance: 0 };
  for (let round = 0; round < 5; round += 1) {
    result = solve(bins, weights);
    // The scatter of a variance is the variance: weighed by what the fit predicts.
    weights = bins.map((b, i) => {
      const predicted = result.gain * b.perGain + result.darkVariance * b.perDark;
      const off = Math.log(b.variance / predicted);
      // Fewer words for bins where texture or movement speaks along.
      return (b.samples / predicted ** 2 / (1 + (off / 0.3) ** 2)) * (weights[i] > 0 ? 1 : 0);
    });
  }
  if (!(result.gain > 0 || result.darkVariance > 0)) {
    return { ok: false, reason: 'the frames differ by less than their codes can tell' };
  }
  return { ok: true, value: result };
}

function solve(bins: readonly Bin[], weights: readonly number[]): SignalNoise {
  let [aa, ab, bb, ay, by] = [0, 0, 0, 0, 0];
  bins.forEach(({ perGain, perDark, variance }, i) => {
    const w = weights[i];
    aa += w * perGain * perGain;
    ab += w * perGain * perDark;
    bb += w * perDark * perDark;
    ay += w * perGain * variance;
    by += w * perDark * variance;
  });
  const determinant = aa * bb - ab * ab;
  const gain = determinant > 1e-12 * aa * bb ? (ay * bb - by * ab) / determinant : -1;
  const dark = determinant > 1e-12 * aa * bb ? (by * aa - ay * ab) / determinant : -1;
  if (gain >= 0 && dark >= 0) return { gain, darkVariance: dark };
  return dark < 0
    ? { gain: Math.max(0, ay / aa), darkVariance: 0 }
    : { gain: 0, darkVariance: Math.max(0, by / bb) };
}
