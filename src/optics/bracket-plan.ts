/**
 * A bracket of exposures for a measured range: how many frames, how far apart, and which times.
 *
 * A frame holds what lies between its clip level and the signal at which its noise is still
 * acceptable. The shortest frame must hold the brightest place, the longest the darkest, and
 * neighbours must share enough for their merge to be judged.
 *
 * References
 * - Signal to noise of a linear sensor, photon and read noise: S/N = e / sqrt(e + r^2).
 *   EMVA Standard 1288, linear camera model (section number not given: from memory).
 */

export interface SensorRange {
  /** Electrons at the clip level. */
  readonly fullWell: number;
  /** Standard deviation of the dark signal, electrons. */
  readonly readNoise: number;
}

/** A technical camera at base sensitivity, for who does not know their own: an assumption. */
export const usualSensor: SensorRange = { fullWell: 45_000, readNoise: 4 };

/** Electrons at which the signal stands above its noise by a factor. */
export function electronsForRatio(ratio: number, readNoise: number): number {
  const square = ratio * ratio;
  return (square + Math.sqrt(square * square + 4 * square * readNoise * readNoise)) / 2;
}

/** Stops from the clip level down to the acceptable noise. */
export function usableStops(sensor: SensorRange, ratio: number): number {
  return Math.log2(sensor.fullWell / electronsForRatio(ratio, sensor.readNoise));
}

export interface BracketPlan {
  /** Seconds, shortest first. */
  readonly seconds: readonly number[];
  readonly stepStops: number;
  /** That one frame holds. */
  readonly frameStops: number;
  /** That the whole bracket holds. */
  readonly heldStops: number;
}

export interface BracketWish {
  /** Brightest over darkest luminance that matters. */
  readonly range: number;
  /** Time at which the brightest that matters just clips, seconds. */
  readonly clipSeconds: number;
  readonly sensor: SensorRange;
  /** Signal to noise that the darkest place must have. */
  readonly ratio: number;
  /** Most stops between frames. */
  readonly mostStep: number;
}

/** The brightest place is kept this much below the clip level, stops: our own choice. */
export const headroomStops = 0.33;

export function planBracket(wish: BracketWish): BracketPlan {
  const frameStops = usableStops(wish.sensor, wish.ratio);
  const wanted = Math.log2(wish.range) + headroomStops;
  const missing = Math.max(0, wanted - frameStops);
  const steps = Math.ceil(missing / wish.mostStep - 1e-9);
  const stepStops = steps === 0 ? 0 : missing / steps;
  const shortest = wish.clipSeconds * 2 ** -headroomStops;
  return {
    seconds: Array.from({ length: steps + 1 }, (_, i) => shortest * 2 ** (i * stepStops)),
    stepStops,
    frameStops,
    heldStops: frameStops + steps * stepStops,
  };
}
