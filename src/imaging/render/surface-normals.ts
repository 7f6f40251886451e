/** The shape of a plate's surface as a view sees it: what an estimate of normals is checked against. */
import { invert } from '../registration/homography.ts';
import { emptyRow, placeRow } from './plate-row.ts';
import { type Plate } from './plate.ts';
import { reliefRow } from './relief.ts';
import { type View, viewHomography } from './view.ts';

/**
 * Unit normals of the plate, without what is finer than a pixel (polishing lines, scratches).
 *
 * @param view One that looks straight at the plate, as that of a base does.
 * @returns x right, y up, z towards the camera, interleaved, rows from the top; (0, 0, 1) beyond
 *   the plate's edge.
 */
export function surfaceNormals(plate: Plate, view: View): Float32Array {
  const { width, height } = view;
  const toMillimetres = invert(viewHomography(view));
  const line = emptyRow(width);
  const out = new Float32Array(width * height * 3);
  for (let y = 0; y < height; y += 1) {
    placeRow(line, toMillimetres, y);
    reliefRow(line, plate);
    for (let x = 0; x < width; x += 1) {
      // Slopes are kept with y down.
      const sx = -line.slopeX[x];
      const sy = line.slopeY[x];
      const long = Math.sqrt(sx * sx + sy * sy + 1);
      out.set([sx / long, sy / long, 1 / long], (y * width + x) * 3);
    }
  }
  return out;
}
