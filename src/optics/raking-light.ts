/**
 * A low lamp: how low for a wall of a given slope to stand out, how its light falls off across
 * the plate, and how far away it must be to be level.
 *
 * References
 * - Lambert's cosine law and the inverse square law: the irradiance of the plate's plane by a
 *   small lamp is I z / d^3, z above the plane and d to the place.
 * - Law of reflection: a wall of slope s shows a lamp to a lens overhead when the lamp stands at
 *   90 - 2 s degrees.
 */

const degree = Math.PI / 180;

/** Brightness of a wall that leans towards the lamp by `slope`, relative to the flat beside it. */
export function wallContrast(height: number, slope: number): number {
  return Math.sin((height + slope) * degree) / Math.sin(height * degree);
}

/**
 * Greatest height, degrees, at which a matt wall of a slope is brighter than the flat by a share
 * (0.25: a quarter brighter). 90 where any height does, 0 where none can.
 */
export function heightForRelief(slope: number, contrast: number): number {
  const cotangent = (1 + contrast - Math.cos(slope * degree)) / Math.sin(slope * degree);
  if (!(cotangent < Infinity)) return 0;
  return Math.min(90, Math.max(0, Math.atan2(1, cotangent) / degree));
}

/** Height at which a polished wall of a slope glints into a lens overhead; null where none does. */
export function heightForGlint(slope: number): number | null {
  const height = 90 - 2 * slope;
  return height > 0 ? height : null;
}

/** Length of the shadow that something of a height throws, in the same unit. */
export function shadowLength(relief: number, height: number): number {
  return relief / Math.tan(height * degree);
}

export interface NearLamp {
  /** Degrees, as in `src/imaging/conventions.ts`. */
  readonly bearing: number;
  readonly height: number;
  /** From the plate's centre, mm. */
  readonly distance: number;
}

/** Irradiance at a place, relative to the plate's centre; mm from the centre, x right, y up. */
export function lampFall({ bearing, height, distance }: NearLamp, x: number, y: number): number {
  const out = distance * Math.cos(height * degree);
  const [lx, ly] = [out * Math.sin(bearing * degree), out * Math.cos(bearing * degree)];
  const z = distance * Math.sin(height * degree);
  const there = Math.hypot(lx - x, ly - y, z);
  return (distance / there) ** 3;
}

/** Light on the brightest corner against the darkest, stops. A lamp over the plate's edge: NaN. */
export function fallOffStops(
  lamp: NearLamp,
  plate: readonly [width: number, height: number],
): number {
  const [w, h] = [plate[0] / 2, plate[1] / 2];
  const out = lamp.distance * Math.cos(lamp.height * degree);
  const overPlate =
    Math.abs(out * Math.sin(lamp.bearing * degree)) < w &&
    Math.abs(out * Math.cos(lamp.bearing * degree)) < h;
  const places = [
    [-w, -h],
    [-w, h],
    [w, -h],
    [w, h],
    [0, -h],
    [0, h],
    [-w, 0],
    [w, 0],
  ].map(([x, y]) => lampFall(lamp, x, y));
  if (overPlate) places.push(1);
  return Math.log2(Math.max(...places) / Math.min(...places));
}

/** Least distance from the plate's centre at which the fall-off is within `stops`, mm. */
export function distanceForFallOff(
  lamp: Omit<NearLamp, 'distance'>,
  plate: readonly [width: number, height: number],
  stops: number,
): number {
  let low = Math.hypot(plate[0], plate[1]) / 2 / Math.max(0.05, Math.cos(lamp.height * degree));
  let high = 1e6;
  while (high / low > 1.0001) {
    const middle = Math.sqrt(low * high);
    if (fallOffStops({ ...lamp, distance: middle }, plate) > stops) low = middle;
    else high = middle;
  }
  return high;
}

/** Fall-off with a second, equal lamp opposite the first, stops. */
export function fallOffOfTwo(
  lamp: NearLamp,
  plate: readonly [width: number, height: number],
): number {
  const opposite = { ...lamp, bearing: (lamp.bearing + 180) % 360 };
  const [w, h] = [plate[0] / 2, plate[1] / 2];
  const sums = [-1, 0, 1].flatMap((i) =>
    [-1, 0, 1].map((j) => lampFall(lamp, i * w, j * h) + lampFall(opposite, i * w, j * h)),
  );
  return Math.log2(Math.max(...sums) / Math.min(...sums));
}
