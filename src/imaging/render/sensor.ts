/**
 * From light to numbers: exposure, fall-off of the lens, the noise of photons and electronics,
 * clipping, and the sRGB curve.
 *
 * References
 * - Shot noise is Poisson, here as its normal limit with the same variance; read noise is
 *   normal. EMVA Standard 1288, linear camera model (section number not given: from memory).
 * - Fall-off: cosine to the fourth power of the field angle.
 * - IEC 61966-2-1 (sRGB): 12.92 L below 0.0031308, else 1.055 L^(1/2.4) - 0.055.
 */
import { byteOfLight, byteSteps } from '../colour/light.ts';
import { encodeSrgb } from '../colour/srgb-curve.ts';
import { hashAt, normalTable } from './seeded.ts';

export interface Sensor {
  /** Luminance to signal: 1 is the clip level. */
  readonly gain: number;
  /** Electrons at the clip level. */
  readonly fullWell: number;
  /** Standard deviation of the dark signal, electrons. */
  readonly readNoise: number;
  /** 0 for no noise, 1 for the sensor's own, 2 for twice the standard deviation. */
  readonly noise: number;
  readonly depth: 8 | 16;
  readonly seed: number;
}

/** A technical camera at its base sensitivity. */
export const technicalCamera = { fullWell: 45_000, readNoise: 4, noise: 1 } as const;

/** Signal of one row with fall-off (relative light by column) and noise, clipped to 0..1, in place. Linear. */
export function exposeRow(
  rows: readonly [Float64Array, Float64Array, Float64Array],
  row: number,
  sensor: Sensor,
  fallOff: Float64Array | null,
): void {
  const [r, g, b] = rows;
  const { gain, fullWell, readNoise, noise, seed } = sensor;
  const per = noise / fullWell;
  const dark = readNoise * readNoise;
  for (let x = 0; x < r.length; x += 1) {
    const k = fallOff ? gain * fallOff[x] : gain;
    let sr = r[x] * k;
    let sg = g[x] * k;
    let sb = b[x] * k;
    if (noise > 0) {
      const h = hashAt(x, row, seed);
      const h2 = Math.imul(h ^ 0x9e3779b9, 0x85ebca6b) >>> 0;
      sr += per * Math.sqrt(sr * fullWell + dark) * normalTable[h & 4095];
      sg += per * Math.sqrt(sg * fullWell + dark) * normalTable[(h >>> 16) & 4095];
      sb += per * Math.sqrt(sb * fullWell + dark) * normalTable[(h2 >>> 18) & 4095];
    }
    r[x] = sr < 0 ? 0 : sr > 1 ? 1 : sr;
    g[x] = sg < 0 ? 0 : sg > 1 ? 1 : sg;
    b[x] = sb < 0 ? 0 : sb > 1 ? 1 : sb;
  }
}

/** Light that reaches the sensor off the axis, relative; field angle from pixels and focal length in pixels. */
export function cosineFourth(column: number, row: number, focalPixels: number): number {
  const t = (column * column + row * row) / (focalPixels * focalPixels);
  return 1 / ((1 + t) * (1 + t));
}

const steps = 16384;
/** Encoded values at square roots of light, so that the dark end has steps enough. */
const curve = Float64Array.from({ length: steps + 2 }, (_, i) => encodeSrgb((i / steps) ** 2));

/** Encoded code of a linear value, by table; off by less than 0.05 of a 16-bit code. */
export function codeOf(linear: number, codes: number): number {
  const place = Math.sqrt(linear) * steps;
  const low = Math.floor(place);
  const value = curve[low] + (curve[low + 1] - curve[low]) * (place - low);
  return Math.floor(value * codes + 0.5);
}

const lightSteps = 65535 * byteSteps;

/** Codes of one row, three channels interleaved, from sample `start` of a picture on. */
export function encodeRow(
  data: Uint8Array | Uint16Array,
  start: number,
  [r, g, b]: readonly [Float64Array, Float64Array, Float64Array],
): void {
  let at = start;
  if (data instanceof Uint8Array) {
    for (let x = 0; x < r.length; x += 1) {
      data[at] = byteOfLight[(r[x] * lightSteps + 0.5) | 0];
      data[at + 1] = byteOfLight[(g[x] * lightSteps + 0.5) | 0];
      data[at + 2] = byteOfLight[(b[x] * lightSteps + 0.5) | 0];
      at += 3;
    }
    return;
  }
  for (let x = 0; x < r.length; x += 1) {
    data[at] = codeOf(r[x], 65535);
    data[at + 1] = codeOf(g[x], 65535);
    data[at + 2] = codeOf(b[x], 65535);
    at += 3;
  }
}
