/**
 * Everything that a merge has to know before its first row: how the frames lie, how long they
 * really were, what their codes stand for and how they scatter. All of it is told from windows of
 * the frames themselves.
 */
import { exposureTimes, type ExposureStep } from '../imaging/merge/exposure-times.ts';
import { evenPlaces } from '../imaging/merge/even-places.ts';
import { frameContributions } from '../imaging/merge/frame-contributions.ts';
import { frameShift, type FrameShift } from '../imaging/merge/frame-shift.ts';
import type { MergeModel } from '../imaging/merge/merge-exposures.ts';
import { noiseFromFrames } from '../imaging/merge/noise-from-frames.ts';
import { recoverResponse, responseTable } from '../imaging/merge/response-curve.ts';
import {
  roundingVariance,
  signalVariance,
  type SignalNoise,
} from '../imaging/merge/signal-noise.ts';
import type { Estimate } from '../imaging/plane.ts';
import {
  readWindows,
  windowLuminance,
  windowSignals,
  type BracketWindows,
} from './bracket-windows.ts';
import type { RowSource } from './row-source.ts';
import { shiftRows } from './shifted-rows.ts';

export interface BracketRequest {
  /** All of one size, in the order of the sitting. */
  readonly sources: readonly RowSource[];
  /** Seconds as marked. */
  readonly marked: readonly number[];
  /** The frame that the others are laid onto. */
  readonly standing: number;
  /** True where no profile says what the codes stand for: the response is recovered. */
  readonly unknownCurve: boolean;
}

export interface BracketPlan {
  /** As they are to be read: shifted where they had moved. */
  readonly sources: readonly RowSource[];
  /** Linear signal, 0 to 1, of every code of each source. */
  readonly signals: readonly Float32Array[];
  readonly model: MergeModel;
  readonly steps: readonly ExposureStep[];
  readonly noise: SignalNoise;
  /** `measured` from the frames, or `assumed` where they could not tell. */
  readonly noiseFrom: 'measured' | 'assumed';
  readonly curveFrom: 'profile' | 'recovered' | 'assumed sRGB';
  /** Against the standing frame; not ok where the frames share no detail. */
  readonly shifts: readonly Estimate<FrameShift>[];
  readonly resampled: readonly boolean[];
  /** Share of places where each frame brings a twentieth of what is known. */
  readonly contributions: readonly number[];
}

/** Linear signal from which a sample is clipped: code 253 of 255 in the sRGB encoding. */
export const clipSignal = 0.98;
/** A frame that moved by more than this is resampled; below, resampling would cost more than it mends. */
export const shiftBound = 0.25;
/** A camera that nobody knows: 20 000 electrons, read noise of 6. Common practice, no source. */
const assumedNoise: SignalNoise = { gain: 1 / 20_000, darkVariance: (6 / 20_000) ** 2 };
/** Every so many samples of the windows tell times and noise: not a multiple of the channels. */
const sampleStep = 7;
const placesWanted = 1600;

export async function planBracket(request: BracketRequest): Promise<BracketPlan> {
  const { marked } = request;
  const windows = await readWindows(request.sources);
  const { table, curveFrom } = signalsOf(request, windows);
  const ownSignals = request.sources.map(() => table);
  const shifts = frameShifts(request, windows, ownSignals);
  const resampled = shifts.map((s) => s.ok && Math.hypot(s.value.dx, s.value.dy) > shiftBound);
  const sources = request.sources.map((source, k) => {
    const shift = shifts[k];
    if (!resampled[k] || !shift.ok) return source;
    // The shifted rows are linear light, so the recovered curve has to go in before them.
    const light = { ...source.light, toLinear: table.map((v) => v * 65535) };
    return shiftRows({ ...source, light }, shift.value.dx, shift.value.dy, clipSignal);
  });
  const signals = sources.map((source, k) =>
    resampled[k] ? source.light.toLinear.map((v) => v / 65535) : table,
  );
  const final = resampled.includes(true) ? await readWindows(sources) : windows;
  const samples = sources.map((_, k) => windowSignals(final, k, signals[k], sampleStep));
  const { seconds, steps } =
    // Under a recovered curve the times are what the curve was told from.
    curveFrom === 'recovered'
      ? { seconds: marked, steps: exposureTimes(samples, marked, { clip: clipSignal }).steps }
      : exposureTimes(samples, marked, { clip: clipSignal });
  const rounding = tableOf(roundingVariance(table));
  const found = noiseFromFrames(samples, seconds, { clip: clipSignal, rounding });
  const noise = found.ok ? found.value : assumedNoise;
  const model: MergeModel = {
    seconds,
    clip: clipSignal,
    variance: (signal) => signalVariance(noise, signal) + rounding(signal) + 1e-14,
  };
  return {
    ...{ sources, signals, model, steps, noise, curveFrom, shifts, resampled },
    noiseFrom: found.ok ? 'measured' : 'assumed',
    contributions: frameContributions(samples, model),
  };
}

/** A function of the signal, kept at 4096 steps. */
function tableOf(of: (signal: number) => number): (signal: number) => number {
  const kept = Float64Array.from({ length: 4097 }, (_, i) => of((i / 4096) ** 2));
  return (signal) =>
    kept[Math.min(4096, Math.max(0, Math.round(Math.sqrt(Math.max(0, signal)) * 4096)))];
}

function signalsOf(
  { sources, marked, unknownCurve }: BracketRequest,
  windows: BracketWindows,
): { table: Float32Array; curveFrom: BracketPlan['curveFrom'] } {
  const [{ light, depth }] = sources;
  const known = light.toLinear.map((v) => v / 65535);
  if (!unknownCurve) return { table: known, curveFrom: 'profile' };
  const found = recoverResponse(placesOf(windows, depth), marked);
  return found.ok
    ? { table: responseTable(found.value, depth), curveFrom: 'recovered' }
    : { table: known, curveFrom: 'assumed sRGB' };
}

/** Even neighbourhoods of all windows; the channels of a camera share one curve. */
function placesOf({ side, codes, channels }: BracketWindows, depth: 8 | 16): Uint8Array[] {
  const scale = depth === 16 ? 1 / 257 : 1;
  const places = evenPlaces(placesWanted);
  const means = codes.map(() => 0);
  for (let w = 0; w < codes[0].length; w += 1) {
    for (let y = 1; y < side - 1; y += 4) {
      for (let x = 1; x < side - 1; x += 4) {
        for (let c = 0; c < channels; c += 1) {
          let spread = 0;
          codes.forEach((windows, k) => {
            let [sum, low, high] = [0, Infinity, -Infinity];
            for (let j = -1; j <= 1; j += 1) {
              for (let i = -1; i <= 1; i += 1) {
                const code = windows[w][((y + j) * side + x + i) * channels + c] * scale;
                sum += code;
                low = Math.min(low, code);
                high = Math.max(high, code);
              }
            }
            means[k] = sum / 9;
            spread = Math.max(spread, high - low);
          });
          places.offer(means, spread);
        }
      }
    }
  }
  return places.chosen();
}

/** Shifts against the standing frame, chained along neighbours in time, which share most light. */
function frameShifts(
  { sources, marked, standing }: BracketRequest,
  windows: BracketWindows,
  signals: readonly Float32Array[],
): Estimate<FrameShift>[] {
  const light = (k: number) => windowLuminance(windows, k, signals[k], sources[k].light.luminance);
  const order = marked.map((_, k) => k).sort((a, b) => marked[a] - marked[b]);
  const found: Estimate<FrameShift>[] = marked.map(() => ({
    ok: true,
    value: { dx: 0, dy: 0, spread: 0, windows: 0 },
  }));
  const at = order.indexOf(standing);
  for (const chain of [order.slice(at), order.slice(0, at + 1).reverse()]) {
    for (let i = 1; i < chain.length; i += 1) {
      const [before, k] = [chain[i - 1], chain[i]];
      const ratio = marked[k] / marked[before];
      const step = frameShift(light(before), light(k), { clip: clipSignal, ratio });
      const last = found[before];
      found[k] =
        step.ok && last.ok
          ? {
              ok: true,
              value: {
                ...step.value,
                dx: last.value.dx + step.value.dx,
                dy: last.value.dy + step.value.dy,
              },
            }
          : step;
    }
  }
  return found;
}
