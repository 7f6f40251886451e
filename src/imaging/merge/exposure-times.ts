/**
 * What the exposures of a bracket really were, from the light that neighbouring frames share.
 * A shutter marked 1/60 opens for 1/64 s, and a lamp may flicker; a merge that believed the mark
 * would show a step wherever one frame hands over to the next.
 *
 * The ratio of two frames is the ratio of their summed signals over the pixels that both hold:
 * for photons that is the estimate of least variance. Which pixels those are is decided by both
 * frames together, since choosing by one of them would choose its noise as well.
 *
 * References
 * - Sum over sum as the Poisson maximum-likelihood ratio: closed form, set the derivative of
 *   the joint likelihood to zero.
 */
import { median } from '../inspect/quantile.ts';

/** Signals of the same places in every frame; linear, 1 is the largest code. */
export type FrameSignals = readonly ArrayLike<number>[];

export interface ExposureStep {
  /** Numbers of the frames, in order of marked time. */
  readonly shorter: number;
  readonly longer: number;
  /** Longer over shorter, as marked. */
  readonly marked: number;
  /** As measured; null where too few pixels are held by both. */
  readonly measured: number | null;
  /** Relative standard error of the measured ratio. */
  readonly uncertainty: number | null;
  /** Pixels that spoke. */
  readonly samples: number;
}

export interface ExposureTimes {
  /** Times to merge with: marked ones where nothing was measured, in the order of the frames. */
  readonly seconds: readonly number[];
  readonly steps: readonly ExposureStep[];
}

export interface ExposureTimesOptions {
  /** Signal from which a sample counts as clipped. */
  readonly clip: number;
  /** Signal below which black level and noise speak; of the shorter frame. */
  readonly low?: number;
}

/** Fewest shared pixels that give a ratio. */
const fewest = 400;
/** Share of the clip level above which a tone curve's shoulder may begin. */
const shoulder = 0.9;

/** @param marked Seconds of each frame as written down, above 0. */
export function exposureTimes(
  frames: FrameSignals,
  marked: readonly number[],
  options: ExposureTimesOptions,
): ExposureTimes {
  const order = marked.map((_, k) => k).sort((a, b) => marked[a] - marked[b]);
  const steps = order.slice(1).map((longer, i): ExposureStep => {
    const shorter = order[i];
    const ratio = marked[longer] / marked[shorter];
    const found = measureRatio(frames[shorter], frames[longer], ratio, options);
    return { shorter, longer, marked: ratio, ...found };
  });
  const logs = new Array<number>(marked.length).fill(0);
  for (const { shorter, longer, marked: ratio, measured } of steps) {
    logs[longer] = logs[shorter] + Math.log(measured ?? ratio);
  }
  // The marks are right on the whole: the mean of the logarithms is kept.
  const offset = order.reduce((s, k) => s + Math.log(marked[k]) - logs[k], 0) / marked.length;
  return { seconds: logs.map((log) => Math.exp(log + offset)), steps };
}

function measureRatio(
  first: ArrayLike<number>,
  second: ArrayLike<number>,
  marked: number,
  { clip, low = 0.01 }: ExposureTimesOptions,
): Pick<ExposureStep, 'measured' | 'uncertainty' | 'samples'> {
  let ratio = marked;
  let places = sharedPlaces(first, second, ratio, clip, low);
  if (places.length < fewest) return { measured: null, uncertainty: null, samples: places.length };
  // A median finds the neighbourhood whatever was marked; then sums, without what moved.
  ratio = median(places.map((i) => second[i] / first[i]));
  places = sharedPlaces(first, second, ratio, clip, low);
  let error = 0;
  for (let round = 0; round < 3 && places.length >= fewest; round += 1) {
    const kept = withoutOutliers(first, second, ratio, places);
    let [sumFirst, sumSecond] = [0, 0];
    for (const i of kept) {
      sumFirst += first[i];
      sumSecond += second[i];
    }
    ratio = sumSecond / sumFirst;
    const squares = kept.reduce((s, i) => s + (second[i] - ratio * first[i]) ** 2, 0);
    error = Math.sqrt(squares) / sumSecond;
  }
  if (places.length < fewest) return { measured: null, uncertainty: null, samples: places.length };
  return { measured: ratio, uncertainty: error, samples: places.length };
}

/** Pixels that both frames hold, judged by their sum. */
function sharedPlaces(
  first: ArrayLike<number>,
  second: ArrayLike<number>,
  ratio: number,
  clip: number,
  low: number,
): number[] {
  const places: number[] = [];
  for (let i = 0; i < first.length; i += 1) {
    if (first[i] >= clip || second[i] >= clip) continue;
    const radiance = (first[i] + second[i]) / (1 + ratio);
    if (radiance > low && radiance * Math.max(1, ratio) < shoulder * clip) places.push(i);
  }
  return places;
}

/** Without the pixels whose difference is far from what the others scatter by. */
function withoutOutliers(
  first: ArrayLike<number>,
  second: ArrayLike<number>,
  ratio: number,
  places: readonly number[],
): number[] {
  // Divided by the root of the signal the differences of all pixels scatter about alike.
  const scaled = (i: number) =>
    Math.abs(second[i] - ratio * first[i]) / Math.sqrt(second[i] + ratio * first[i] + 1e-9);
  const limit = 4.5 * median(places.map(scaled)); // three standard deviations of a normal law
  return places.filter((i) => scaled(i) <= limit + 1e-12);
}
