/**
 * The divider of Slide: a straight line that may be turned, on the screen or on the plate.
 * The first view lies where `nx * x + ny * y < d`, the second beyond. At a turn of 0 the line
 * stands upright, the first view on the left; it turns clockwise.
 */
import type { Placing } from './placing.ts';
import type { Region } from './view-state.ts';

export interface Line {
  /** Unit normal, pointing to the second view; x right, y down. */
  readonly nx: number;
  readonly ny: number;
  /** Distance of the line from the origin along the normal. */
  readonly d: number;
}

function span(box: Region, nx: number, ny: number): readonly [low: number, high: number] {
  const xs = [box.x, box.x + box.width];
  const ys = [box.y, box.y + box.height];
  const all = xs.flatMap((x) => ys.map((y) => nx * x + ny * y));
  return [Math.min(...all), Math.max(...all)];
}

function normal(turnDegrees: number): readonly [nx: number, ny: number] {
  const t = (turnDegrees * Math.PI) / 180;
  return [Math.cos(t), Math.sin(t)];
}

/** The line that has gone a share of its way (0 to 1) across a box. */
export function dividerLine(box: Region, share: number, turnDegrees: number): Line {
  const [nx, ny] = normal(turnDegrees);
  const [low, high] = span(box, nx, ny);
  return { nx, ny, d: low + share * (high - low) };
}

/** The share of its way at which the line passes through a point, held to 0..1. */
export function dividerShare(box: Region, turnDegrees: number, x: number, y: number): number {
  const [nx, ny] = normal(turnDegrees);
  const [low, high] = span(box, nx, ny);
  return Math.min(1, Math.max(0, (nx * x + ny * y - low) / (high - low)));
}

/** A line given in plate pixels as it lies on the screen, CSS pixels. */
export function lineOnScreen(line: Line, placing: Placing): Line {
  const nx = placing.mirrored ? -line.nx : line.nx;
  return {
    nx,
    ny: line.ny,
    d: line.d * placing.scale + nx * placing.x + line.ny * placing.y,
  };
}

/** The two points where a line leaves a box, or null when it misses it. */
export function acrossBox(
  line: Line,
  box: Region,
): readonly [readonly [number, number], readonly [number, number]] | null {
  const { nx, ny, d } = line;
  const right = box.x + box.width;
  const bottom = box.y + box.height;
  const points: (readonly [number, number])[] = [];
  const add = (x: number, y: number) => {
    const inside =
      x >= box.x - 1e-6 && x <= right + 1e-6 && y >= box.y - 1e-6 && y <= bottom + 1e-6;
    const fresh = !points.some(([px, py]) => Math.hypot(px - x, py - y) < 1e-6);
    if (inside && fresh) points.push([x, y]);
  };
  if (Math.abs(nx) > 1e-9) for (const y of [box.y, bottom]) add((d - ny * y) / nx, y);
  if (Math.abs(ny) > 1e-9) for (const x of [box.x, right]) add(x, (d - nx * x) / ny);
  return points.length >= 2 ? [points[0], points[1]] : null;
}
