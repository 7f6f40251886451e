/** A four-sided outline in pixels: the plate, or a target, as the camera sees it. */

export type Point = readonly [x: number, y: number];

export interface Quad {
  /** Clockwise from the top left. */
  readonly corners: readonly [Point, Point, Point, Point];
  /** Mean of the two sides across and of the two sides down, pixels. */
  readonly width: number;
  readonly height: number;
  readonly shorterSide: number;
}

export function quadOf(corners: readonly [Point, Point, Point, Point]): Quad {
  const side = (i: number, j: number): number =>
    Math.hypot(corners[i][0] - corners[j][0], corners[i][1] - corners[j][1]);
  const width = (side(0, 1) + side(3, 2)) / 2;
  const height = (side(0, 3) + side(1, 2)) / 2;
  return { corners, width, height, shorterSide: Math.min(width, height) };
}

/** Distance to the nearest side, pixels: positive inside, negative outside. For convex outlines. */
export function depthInside(quad: Quad, x: number, y: number): number {
  return depthMeter(quad)(x, y);
}

/** {@link depthInside} for many points of one outline. */
export function depthMeter({ corners }: Quad): (x: number, y: number) => number {
  // Rows run down, so that the inside of a clockwise outline lies to the right of each side.
  const across = new Float64Array(4);
  const down = new Float64Array(4);
  const offset = new Float64Array(4);
  corners.forEach(([ax, ay], k) => {
    const [bx, by] = corners[(k + 1) % 4];
    const length = Math.hypot(bx - ax, by - ay);
    across[k] = (ay - by) / length;
    down[k] = (bx - ax) / length;
    offset[k] = -(across[k] * ax + down[k] * ay);
  });
  return (x, y) => {
    let least = Infinity;
    for (let k = 0; k < 4; k += 1) {
      const depth = across[k] * x + down[k] * y + offset[k];
      if (depth < least) least = depth;
    }
    return least;
  };
}

/** The same outline in a picture `factor` times as large; pixel centres kept in mind. */
export function scaleQuad({ corners }: Quad, factor: number): Quad {
  const move = ([x, y]: Point): Point => [(x + 0.5) * factor - 0.5, (y + 0.5) * factor - 0.5];
  return quadOf([move(corners[0]), move(corners[1]), move(corners[2]), move(corners[3])]);
}

/** Where a place of the unit square lies in the outline: perspective through its four corners. */
export function placeInQuad({ corners }: Quad, u: number, v: number): Point {
  const [[x0, y0], [x1, y1], [x2, y2], [x3, y3]] = corners;
  // Heckbert (1989), Fundamentals of Texture Mapping and Image Warping, section 2.2.3.
  const sx = x0 - x1 + x2 - x3;
  const sy = y0 - y1 + y2 - y3;
  const [dx1, dy1, dx2, dy2] = [x1 - x2, y1 - y2, x3 - x2, y3 - y2];
  const det = dx1 * dy2 - dx2 * dy1;
  const g = (sx * dy2 - sy * dx2) / det;
  const h = (dx1 * sy - dy1 * sx) / det;
  const w = g * u + h * v + 1;
  return [
    ((x1 - x0 + g * x1) * u + (x3 - x0 + h * x3) * v + x0) / w,
    ((y1 - y0 + g * y1) * u + (y3 - y0 + h * y3) * v + y0) / w,
  ];
}
