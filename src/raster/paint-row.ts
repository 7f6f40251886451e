/**
 * From codes or linear light to the sRGB bytes that are shown: one look-up, or a matrix and a
 * look-up. Colours outside sRGB are clipped channel by channel.
 */
import { byteOfLight, byteSteps, type Light } from '../imaging/colour/light.ts';
import type { Matrix3 } from '../imaging/colour/matrix3.ts';
import type { RowLoops } from '../imaging/row-loops.ts';

const top = 65535 * byteSteps;
const index = (v: number): number => (v < 0 ? 0 : v > top ? top : v | 0);

/** Paint the codes that the loops hold. */
export function paintCodes(loops: RowLoops, { toLinear, matrix }: Light): () => void {
  if (!matrix) return loops.paintCodes;
  const { codes, bytes } = loops;
  const [a, b, c, d, e, f, g, h, k] = stepped(matrix);
  return () => {
    for (let i = 0; i < codes.length; i += 3) {
      const red = toLinear[codes[i]];
      const green = toLinear[codes[i + 1]];
      const blue = toLinear[codes[i + 2]];
      bytes[i] = byteOfLight[index(a * red + b * green + c * blue + 0.5)];
      bytes[i + 1] = byteOfLight[index(d * red + e * green + f * blue + 0.5)];
      bytes[i + 2] = byteOfLight[index(g * red + h * green + k * blue + 0.5)];
    }
  };
}

/** Paint a row of linear light in the source's primaries, which lies in the loops' memory. */
export function paintLight(loops: RowLoops, { matrix }: Light): (row: Float32Array) => void {
  if (!matrix) return loops.paintLight;
  const { bytes } = loops;
  const [a, b, c, d, e, f, g, h, k] = stepped(matrix);
  return (row) => {
    for (let i = 0; i < row.length; i += 3) {
      const red = row[i];
      const green = row[i + 1];
      const blue = row[i + 2];
      bytes[i] = byteOfLight[index(a * red + b * green + c * blue + 0.5)];
      bytes[i + 1] = byteOfLight[index(d * red + e * green + f * blue + 0.5)];
      bytes[i + 2] = byteOfLight[index(g * red + h * green + k * blue + 0.5)];
    }
  };
}

/** The matrix with the table's steps multiplied in. */
function stepped(matrix: Matrix3): number[] {
  return matrix.map((v) => v * byteSteps);
}
