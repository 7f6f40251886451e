/** What the measures read: one channel, row-major, in whatever typed array holds it. */
export interface Samples {
  readonly width: number;
  readonly height: number;
  readonly data: Float32Array | Uint16Array;
}

/** A part of a picture in whole pixels: left and top edge, size. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Copy a part of a plane. @throws RangeError when it does not lie inside. */
export function cutOut(plane: Samples, area: Area): Samples {
  const { x, y, width, height } = area;
  if (x < 0 || y < 0 || x + width > plane.width || y + height > plane.height) {
    throw new RangeError(
      `The area ${x},${y},${width},${height} does not lie in a picture of ` +
        `${plane.width} x ${plane.height} pixels.`,
    );
  }
  const data = new Float32Array(width * height);
  for (let row = 0; row < height; row += 1) {
    const start = (y + row) * plane.width + x;
    data.set(plane.data.subarray(start, start + width), row * width);
  }
  return { width, height, data };
}
