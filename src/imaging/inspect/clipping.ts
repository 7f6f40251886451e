/**
 * Where light was lost: pixels that hold the largest code hide how bright they were. A mirror
 * plate's bevel and mat nearly always glint; the same glare on the image is a loss.
 *
 * Common practice, no source: what counts as the edge is a band inside the plate's outline of
 * 4 % of its shorter side.
 */
import { cellEdges, type Grid } from './grid.ts';
import { depthMeter, type Quad } from './quad.ts';
import type { Samples } from './samples.ts';

export interface Clipping {
  /** Share of the plate's inner part that is clipped, 0 to 1. */
  readonly imageShare: number;
  /** Share of the band along the plate's edge that is clipped, 0 to 1. */
  readonly edgeShare: number;
  /** Share of what lies around the plate; NaN where nothing does. */
  readonly surroundShare: number;
  /** Share of each cell, 0 to 1. */
  readonly map: Grid;
}

/** Width of the edge band against the plate's shorter side. */
const edgeBand = 0.04;

/**
 * Measure a plane of linear light in which `clip` and above is clipped.
 *
 * On a plane that was shrunk by averaging, only places clipped all over reach `clip`: the
 * shares are then of clipped *areas* and leave out single pixels.
 * @param outline The plate's corners; null takes the whole picture for image.
 */
export function measureClipping(
  plane: Samples,
  outline: Quad | null,
  clip: number,
  columns = 24,
  rows = 18,
): Clipping {
  const zones = { image: [0, 0], edge: [0, 0], surround: [0, 0] };
  const band = outline ? edgeBand * outline.shorterSide : 0;
  const depthAt = outline ? depthMeter(outline) : () => Infinity;
  const across = cellEdges(plane.width, columns);
  const down = cellEdges(plane.height, rows);
  const values = new Float64Array(columns * rows);
  for (let r = 0; r < rows; r += 1) {
    for (let c = 0; c < columns; c += 1) {
      let clipped = 0;
      for (let y = down[r]; y < down[r + 1]; y += 1) {
        for (let x = across[c]; x < across[c + 1]; x += 1) {
          const lost = plane.data[y * plane.width + x] >= clip ? 1 : 0;
          const depth = depthAt(x, y);
          const zone = depth < 0 ? zones.surround : depth < band ? zones.edge : zones.image;
          zone[0] += lost;
          zone[1] += 1;
          clipped += lost;
        }
      }
      values[r * columns + c] =
        clipped / ((down[r + 1] - down[r]) * (across[c + 1] - across[c])) || 0;
    }
  }
  return {
    imageShare: zones.image[0] / zones.image[1],
    edgeShare: zones.edge[1] > 0 ? zones.edge[0] / zones.edge[1] : 0,
    surroundShare: zones.surround[0] / zones.surround[1],
    map: { columns, rows, values },
  };
}
