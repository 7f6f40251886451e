/** Spots as the path of an SVG over the picture, CSS pixels. */
import { regionOnScreen, toScreen, type Placing } from '../placing.ts';
import type { Region } from '../view-state.ts';
import type { ShapeDrawing } from './shape-drawing.ts';
import { rectangleBetween, type Point } from './spot-shape.ts';

function corners(placing: Placing, points: readonly Point[], closed: boolean): string {
  const line = points.map((point, i) => {
    const [x, y] = toScreen(placing, ...point);
    return `${i === 0 ? 'M' : 'L'}${x} ${y}`;
  });
  return `${line.join('')}${closed ? 'z' : ''}`;
}

function rectangle(placing: Placing, region: Region): string {
  const { x, y, width, height } = regionOnScreen(placing, region);
  return `M${x} ${y}h${width}v${height}h${-width}z`;
}

/** The edge of a spot. */
export function spotPath(
  placing: Placing,
  spot: { readonly region: Region; readonly outline?: readonly Point[] },
): string {
  return spot.outline === undefined
    ? rectangle(placing, spot.region)
    : corners(placing, spot.outline, true);
}

/** A cross at each corner that is set, and what joins them so far. */
export function drawingPath(
  placing: Placing,
  { kind, points, finished }: Pick<ShapeDrawing, 'kind' | 'points' | 'finished'>,
): string {
  const crosses = points.map((point) => {
    const [x, y] = toScreen(placing, ...point);
    return `M${x - 7} ${y}h14M${x} ${y - 7}v14`;
  });
  const joined =
    kind === 'rectangle' && finished
      ? rectangle(placing, rectangleBetween(points[0], points[1]))
      : corners(placing, points, finished);
  return crosses.join('') + joined;
}
