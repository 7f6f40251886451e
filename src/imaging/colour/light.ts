/**
 * How the codes in a file stand for light. Everything that averages, warps or measures works
 * on linear light; this is the one description of the way there and of the way back to the
 * sRGB bytes that a browser shows.
 *
 * A profile's matrix comes last: shrinking and warping in the source's own primaries clips
 * nothing, and one product per output sample is all that a conversion costs.
 */
import type { Matrix3 } from './matrix3.ts';
import { srgbLuminance } from './rgb-primaries.ts';
import { decodeSrgb, encodeSrgb } from './srgb-curve.ts';

export interface Light {
  /** Code to linear light of the same channel, 0 to 65535, not rounded; one entry per code. */
  readonly toLinear: Float32Array;
  /** Code to sRGB byte, right where there is no matrix; one entry per code. */
  readonly toByte: Uint8Array;
  /** Linear source primaries to linear sRGB; null where the source has those primaries. */
  readonly matrix: Matrix3 | null;
  /** Share of each linear source channel in luminance. */
  readonly luminance: readonly [number, number, number];
}

const full = 65535;

/**
 * Steps of {@link byteOfLight} in one unit of linear light. The sRGB curve is steep in the dark:
 * with one step a byte could be off by 0.025 of a code beyond rounding, with four by 0.007.
 */
export const byteSteps = 4;

/** The sRGB byte that shows linear light v, at index `v * byteSteps`, v from 0 to 65535. */
export const byteOfLight: Uint8Array = byteTable();

/** Filled from one byte's border to the next: a quarter of a million powers would take longer. */
function byteTable(): Uint8Array {
  const table = new Uint8Array(full * byteSteps + 1);
  for (let byte = 0, from = 0; byte < 256; byte += 1) {
    const border = decodeSrgb((byte + 0.5) / 255) * full * byteSteps;
    const to = Math.min(table.length, Math.ceil(border));
    table.fill(byte, from, to);
    from = to;
  }
  return table;
}

const clipped = (v: number): number => Math.min(1, Math.max(0, v));

/** Linear light of every code of a curve, 0 to 65535. */
function linearTable(depth: 8 | 16, curve: (encoded: number) => number): Float32Array {
  const last = 2 ** depth - 1;
  const table = new Float32Array(last + 1);
  for (let i = 0; i <= last; i += 1) table[i] = clipped(curve(i / last)) * full;
  return table;
}

/** Sixteen-bit codes that are linear light already, in sRGB primaries. */
export const linearLight: Light = {
  toLinear: linearTable(16, (v) => v),
  toByte: byteOfLight.filter((_, i) => i % byteSteps === 0),
  matrix: null,
  luminance: srgbLuminance,
};

/** The same light after its codes have been made linear: what a warped row holds. */
export function linearised(light: Light): Light {
  return { ...light, toLinear: linearLight.toLinear, toByte: linearLight.toByte };
}

/** Codes through the sRGB curve, in sRGB primaries: a byte is rounded straight from its code. */
export function srgbLight(depth: 8 | 16): Light {
  const last = 2 ** depth - 1;
  const toByte = new Uint8Array(last + 1);
  for (let i = 0; i <= last; i += 1) toByte[i] = Math.round((i / last) * 255);
  return {
    toLinear: linearTable(depth, decodeSrgb),
    toByte,
    matrix: null,
    luminance: srgbLuminance,
  };
}

/**
 * Codes through any tone curve, in any primaries.
 *
 * @param curve Encoded to linear, both 0 to 1.
 * @param matrix Linear source primaries to linear sRGB, or null for the same primaries or grey.
 */
export function curvedLight(
  depth: 8 | 16,
  curve: (encoded: number) => number,
  matrix: Matrix3 | null,
): Light {
  const toLinear = linearTable(depth, curve);
  const toByte = new Uint8Array(toLinear.length);
  // Straight from the curve, without the steps of the table.
  for (let i = 0; i < toByte.length; i += 1) {
    toByte[i] = Math.round(encodeSrgb(clipped(curve(i / (toByte.length - 1)))) * 255);
  }
  const [r, g, b] = srgbLuminance;
  const m = matrix;
  return {
    toLinear,
    toByte,
    matrix,
    luminance: m
      ? [
          r * m[0] + g * m[3] + b * m[6],
          r * m[1] + g * m[4] + b * m[7],
          r * m[2] + g * m[5] + b * m[8],
        ]
      : srgbLuminance,
  };
}
