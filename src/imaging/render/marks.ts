/** Scratches and dust of one capture, laid on its rows. */
import { type Homography } from '../conventions.ts';
import { type PlateRow } from './plate-row.ts';
import { type Plate } from './plate.ts';
import { drawStroke, strokeCursor, strokesInPixels } from './strokes.ts';

/** Fills in scratches and dust of the rows of one capture, which must come in order from `first` on. */
export function markRows(
  plate: Plate,
  toPixels: Homography,
  margin: number,
): (line: PlateRow, row: number) => void {
  // Columns of a row start `margin` pixels left of the picture.
  const moved: Homography = [
    toPixels[0] + margin * toPixels[6],
    toPixels[1] + margin * toPixels[7],
    toPixels[2] + margin * toPixels[8],
    toPixels[3],
    toPixels[4],
    toPixels[5],
    toPixels[6],
    toPixels[7],
    toPixels[8],
  ];
  const scratchesAt = strokeCursor(strokesInPixels(plate.scratches, moved));
  const dustAt = strokeCursor(strokesInPixels(plate.dust, moved));
  return (line, row) => {
    line.scratch.fill(0);
    line.dust.fill(0);
    for (const stroke of scratchesAt(row)) {
      drawStroke(stroke, row, line.length, (i, weight) => {
        if (weight <= line.scratch[i]) return;
        line.scratch[i] = weight;
        line.alongX[i] = stroke.alongX;
        line.alongY[i] = stroke.alongY;
      });
    }
    for (const stroke of dustAt(row)) {
      drawStroke(stroke, row, line.length, (i, weight) => {
        line.dust[i] = Math.max(line.dust[i], weight);
      });
    }
  };
}
