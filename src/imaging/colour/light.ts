/**
 * How the codes in a file stand for light. Everything that averages, warps or measures works
 * on linear light; this is the one description of the way there and of the way back to the
 * sRGB bytes that a browser shows.
 *
 * A profile's matrix comes last: shrinking and warping in the source's own primaries clips
 * nothing, and one product per output sample is all that a conversion costs.
 */
import { type Matrix3 } from './matrix3.ts';
import { srgbLuminance } from './rgb-primaries.ts';
import { decodeSrgb, encodeSrgb } from './srgb-curve.ts';

export interface Light {
  /** Code to linear light of the same channel, 0 to 65535; one entry per possible code. */
  readonly toLinear: Uint16Array;
  /** Code to sRGB byte, right where there is no matrix; one entry per possible code. */
  readonly toByte: Uint8Array;
  /** Linear source primaries to linear sRGB; null where the source has those primaries. */
  readonly matrix: Matrix3 | null;
  /** Share of each linear source channel in luminance. */
  readonly luminance: readonly [number, number, number];
}

const full = 65535;

function table16(depth: 8 | 16, value: (code: number) => number): Uint16Array {
  const last = 2 ** depth - 1;
  return Uint16Array.from({ length: last + 1 }, (_, i) =>
    Math.round(Math.min(1, Math.max(0, value(i / last))) * full),
  );
}

/** Linear light, 0 to 65535, to the sRGB byte that shows it. */
export const linearToByte: Uint8Array = Uint8Array.from({ length: 65536 }, (_, i) =>
  Math.round(encodeSrgb(i / full) * 255),
);

const identityTable: Uint16Array = Uint16Array.from({ length: 65536 }, (_, i) => i);

/** Sixteen-bit codes that are linear light already, in sRGB primaries. */
export const linearLight: Light = {
  toLinear: identityTable,
  toByte: linearToByte,
  matrix: null,
  luminance: srgbLuminance,
};

/** The same light after its codes have been made linear: what a shrunk or warped row holds. */
export function linearised(light: Light): Light {
  return { ...light, toLinear: identityTable, toByte: linearToByte };
}

/** Codes through the sRGB curve, in sRGB primaries: a byte is rounded straight from its code. */
export function srgbLight(depth: 8 | 16): Light {
  const last = 2 ** depth - 1;
  return {
    toLinear: table16(depth, decodeSrgb),
    toByte: Uint8Array.from({ length: last + 1 }, (_, i) => Math.round((i / last) * 255)),
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
  const toLinear = table16(depth, curve);
  const [r, g, b] = srgbLuminance;
  const m = matrix;
  return {
    toLinear,
    toByte: Uint8Array.from(toLinear, (v) => linearToByte[v]),
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
