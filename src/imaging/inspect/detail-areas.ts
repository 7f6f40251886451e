/**
 * Where to look for sharpness: the squares of a picture with the most detail, away from the
 * plate's edge and from clipped places. Chosen on an overview, measured at full resolution.
 */
import { depthInside, type Quad } from './quad.ts';
import type { Area, Samples } from './samples.ts';

/**
 * Squares of `side` overview pixels with the strongest detail, the strongest first.
 * @param outline The plate's corners; null takes the whole picture.
 */
export function detailAreas(
  plane: Samples,
  outline: Quad | null,
  clip: number,
  side: number,
  most: number,
): Area[] {
  const ranked: { area: Area; detail: number }[] = [];
  for (let y = 0; y + side <= plane.height; y += side) {
    for (let x = 0; x + side <= plane.width; x += side) {
      const centre = [x + (side - 1) / 2, y + (side - 1) / 2] as const;
      if (outline && depthInside(outline, ...centre) < 0.5 * side + 0.02 * outline.shorterSide) {
        continue;
      }
      const area = { x, y, width: side, height: side };
      const detail = detailOf(plane, area, clip);
      if (detail > 0) ranked.push({ area, detail });
    }
  }
  ranked.sort((a, b) => b.detail - a.detail);
  return ranked.slice(0, most).map(({ area }) => area);
}

/** Mean square of the difference of neighbours over the mean level; 0 where much is clipped. */
function detailOf({ width, data }: Samples, area: Area, clip: number): number {
  let clipped = 0;
  let square = 0;
  let level = 0;
  for (let y = area.y; y < area.y + area.height - 1; y += 1) {
    for (let x = area.x; x < area.x + area.width - 1; x += 1) {
      const here = data[y * width + x];
      if (here >= clip) clipped += 1;
      square += (data[y * width + x + 1] - here) ** 2 + (data[(y + 1) * width + x] - here) ** 2;
      level += here;
    }
  }
  const pixels = (area.width - 1) * (area.height - 1);
  if (clipped > 0.05 * pixels || level === 0) return 0;
  return square / pixels / (level / pixels) ** 1.5;
}
