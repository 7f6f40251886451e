/**
 * From codes or linear light to the sRGB bytes that are shown: one look-up, or a matrix and a
 * look-up. Colours outside sRGB are clipped channel by channel.
 */
import { byteOfLight, byteSteps, type Light } from '../imaging/colour/light.ts';
import type { Matrix3 } from '../imaging/colour/matrix3.ts';

/** Paint `samples` samples from `from` of a row into `bytes` from `to`. */
export type Paint<Row> = (
  row: Row,
  from: number,
  bytes: Uint8Array,
  to: number,
  samples: number,
) => void;

const top = 65535 * byteSteps;
const index = (v: number): number => (v < 0 ? 0 : v > top ? top : v | 0);

/** From the source's codes. */
export function paintCodes({ toByte, toLinear, matrix }: Light): Paint<Uint8Array | Uint16Array> {
  if (!matrix) {
    return (codes, from, bytes, to, samples) => {
      for (let i = 0; i < samples; i += 1) bytes[to + i] = toByte[codes[from + i]];
    };
  }
  const [a, b, c, d, e, f, g, h, k] = stepped(matrix);
  return (codes, from, bytes, to, samples) => {
    for (let i = 0; i < samples; i += 3) {
      const red = toLinear[codes[from + i]];
      const green = toLinear[codes[from + i + 1]];
      const blue = toLinear[codes[from + i + 2]];
      bytes[to + i] = byteOfLight[index(a * red + b * green + c * blue + 0.5)];
      bytes[to + i + 1] = byteOfLight[index(d * red + e * green + f * blue + 0.5)];
      bytes[to + i + 2] = byteOfLight[index(g * red + h * green + k * blue + 0.5)];
    }
  };
}

/** From linear light in the source's primaries. */
export function paintLight({ matrix }: Light): Paint<Float32Array> {
  if (!matrix) {
    return (row, from, bytes, to, samples) => {
      for (let i = 0; i < samples; i += 1) {
        bytes[to + i] = byteOfLight[(row[from + i] * byteSteps + 0.5) | 0];
      }
    };
  }
  const [a, b, c, d, e, f, g, h, k] = stepped(matrix);
  return (row, from, bytes, to, samples) => {
    for (let i = 0; i < samples; i += 3) {
      const red = row[from + i];
      const green = row[from + i + 1];
      const blue = row[from + i + 2];
      bytes[to + i] = byteOfLight[index(a * red + b * green + c * blue + 0.5)];
      bytes[to + i + 1] = byteOfLight[index(d * red + e * green + f * blue + 0.5)];
      bytes[to + i + 2] = byteOfLight[index(g * red + h * green + k * blue + 0.5)];
    }
  };
}

/** The matrix with the table's steps multiplied in. */
function stepped(matrix: Matrix3): number[] {
  return matrix.map((v) => v * byteSteps);
}
