/** From codes to the sRGB bytes that are shown: one look-up, or three look-ups and a matrix. */
import { linearToByte, type Light } from '../imaging/colour/light.ts';

/** Paint `samples` codes from `from` of `codes` into `bytes` from `to`. */
export type PaintRow = (
  codes: Uint8Array | Uint16Array,
  from: number,
  bytes: Uint8Array,
  to: number,
  samples: number,
) => void;

const top = 65535;
const clamped = (v: number): number => (v < 0 ? 0 : v > top ? top : v | 0);

/** The way to sRGB bytes for this light; colours outside sRGB are clipped channel by channel. */
export function paintRow(light: Light): PaintRow {
  const { toByte, toLinear, matrix } = light;
  if (!matrix) {
    return (codes, from, bytes, to, samples) => {
      for (let i = 0; i < samples; i += 1) bytes[to + i] = toByte[codes[from + i]];
    };
  }
  const [a, b, c, d, e, f, g, h, k] = matrix;
  const encode = linearToByte;
  return (codes, from, bytes, to, samples) => {
    for (let i = 0; i < samples; i += 3) {
      const red = toLinear[codes[from + i]];
      const green = toLinear[codes[from + i + 1]];
      const blue = toLinear[codes[from + i + 2]];
      bytes[to + i] = encode[clamped(a * red + b * green + c * blue + 0.5)];
      bytes[to + i + 1] = encode[clamped(d * red + e * green + f * blue + 0.5)];
      bytes[to + i + 2] = encode[clamped(g * red + h * green + k * blue + 0.5)];
    }
  };
}
