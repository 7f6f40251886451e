/**
 * Thin marks: scratches, wipes, fibres and specks, each a straight piece with round ends.
 *
 * A scratch of 20 micrometres is narrower than a pixel. Its profile is widened to the pixel's
 * own blur and thinned by the same factor, so that what it covers does not depend on how far
 * away the camera stands.
 */
import type { Homography } from '../conventions.ts';
import { project } from '../conventions.ts';
import { numbersFrom } from './seeded.ts';

/** A mark from one point to another, mm on the plate; width in mm; strength 0 to 1. */
export interface Stroke {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly width: number;
  readonly strength: number;
}

/** A stroke in the pixels of one capture. */
export interface PixelStroke extends Stroke {
  /** Unit direction along the stroke, on the plate. */
  readonly alongX: number;
  readonly alongY: number;
  /** First and last row that it touches. */
  readonly top: number;
  readonly bottom: number;
}

/** Half of the profile's width is this many pixels at least: the blur of a pixel. */
const narrowest = 0.55;

/** How many half-widths away a profile is taken for nothing: exp(-3^2) is 1e-4. */
const reach = 3;

/** Strokes as one capture sees them, by first row. `toPixels` takes mm to pixels. */
export function strokesInPixels(strokes: readonly Stroke[], toPixels: Homography): PixelStroke[] {
  return strokes.map((stroke) => strokeInPixels(stroke, toPixels)).sort((a, b) => a.top - b.top);
}

function strokeInPixels(stroke: Stroke, toPixels: Homography): PixelStroke {
  const [x0, y0] = project(toPixels, stroke.x0, stroke.y0);
  const [x1, y1] = project(toPixels, stroke.x1, stroke.y1);
  const [xs] = project(toPixels, stroke.x0 + 1, stroke.y0);
  const trueWidth = (stroke.width / 2) * Math.abs(xs - x0);
  const width = Math.hypot(trueWidth, narrowest);
  const long = Math.hypot(stroke.x1 - stroke.x0, stroke.y1 - stroke.y0);
  // A speck is thinned in both directions.
  const thinning = long * Math.abs(xs - x0) < width ? (trueWidth / width) ** 2 : trueWidth / width;
  return {
    x0,
    y0,
    x1,
    y1,
    width,
    strength: stroke.strength * thinning,
    alongX: long === 0 ? 1 : (stroke.x1 - stroke.x0) / long,
    alongY: long === 0 ? 0 : (stroke.y1 - stroke.y0) / long,
    top: Math.floor(Math.min(y0, y1) - reach * width),
    bottom: Math.ceil(Math.max(y0, y1) + reach * width),
  };
}

/** The strokes that one row touches, for rows taken in order; forgets what lies above. */
export function strokeCursor(sorted: readonly PixelStroke[]): (row: number) => PixelStroke[] {
  let next = 0;
  let active: PixelStroke[] = [];
  return (row) => {
    while (next < sorted.length && sorted[next].top <= row) {
      active.push(sorted[next]);
      next += 1;
    }
    active = active.filter((stroke) => stroke.bottom >= row);
    return active;
  };
}

/**
 * Add one stroke to a row of weights.
 *
 * @param visit Told the column and the weight, 0 to 1, wherever the stroke covers something.
 */
export function drawStroke(
  stroke: PixelStroke,
  row: number,
  columns: number,
  visit: (column: number, weight: number) => void,
): void {
  const dx = stroke.x1 - stroke.x0;
  const dy = stroke.y1 - stroke.y0;
  const square = dx * dx + dy * dy;
  const far = reach * stroke.width;
  const [from, to] = spanOf(stroke, row, far);
  const first = Math.max(0, Math.floor(from));
  const last = Math.min(columns - 1, Math.ceil(to));
  const narrow = 1 / (stroke.width * stroke.width);
  for (let x = first; x <= last; x += 1) {
    const px = x - stroke.x0;
    const py = row - stroke.y0;
    const along = square === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / square));
    const ox = px - along * dx;
    const oy = py - along * dy;
    const t = (ox * ox + oy * oy) * narrow;
    if (t < reach * reach) visit(x, stroke.strength * Math.exp(-t));
  }
}

/** Columns between which a row can come within `far` of the stroke. */
function spanOf(stroke: PixelStroke, row: number, far: number): readonly [number, number] {
  const dy = stroke.y1 - stroke.y0;
  const low = Math.min(stroke.x0, stroke.x1) - far;
  const high = Math.max(stroke.x0, stroke.x1) + far;
  if (Math.abs(dy) < 1e-6) return [low, high];
  const slope = (stroke.x1 - stroke.x0) / dy;
  const middle = stroke.x0 + (row - stroke.y0) * slope;
  const half = far * Math.sqrt(1 + slope * slope);
  return [Math.max(low, middle - half), Math.min(high, middle + half)];
}

/** A bowed line as a chain of straight pieces. */
export function bowedStroke(stroke: Stroke, bow: number, pieces: number): Stroke[] {
  const dx = stroke.x1 - stroke.x0;
  const dy = stroke.y1 - stroke.y0;
  const point = (t: number): readonly [number, number] => {
    const lift = 4 * bow * t * (1 - t);
    return [stroke.x0 + dx * t - dy * lift, stroke.y0 + dy * t + dx * lift];
  };
  return Array.from({ length: pieces }, (_, i) => {
    const [x0, y0] = point(i / pieces);
    const [x1, y1] = point((i + 1) / pieces);
    // Pressure rises and falls along the stroke.
    const pressure = 0.35 + 0.65 * Math.sin((Math.PI * (i + 0.5)) / pieces);
    return { ...stroke, x0, y0, x1, y1, strength: stroke.strength * pressure };
  });
}

/** Fine scratches in all directions over a plate of the given size, mm. */
export function randomScratches(
  seed: number,
  count: number,
  width: number,
  height: number,
): Stroke[] {
  const next = numbersFrom(seed);
  return Array.from({ length: count }, () => {
    const angle = next() * Math.PI * 2;
    const long = 1.5 + 14 * next() ** 3;
    const x = (next() - 0.5) * width;
    const y = (next() - 0.5) * height;
    return bowedStroke(
      {
        x0: x,
        y0: y,
        x1: x + Math.cos(angle) * long,
        y1: y + Math.sin(angle) * long,
        width: 0.006 + 0.014 * next() ** 2,
        strength: 0.25 + 0.6 * next(),
      },
      (next() - 0.5) * 0.12,
      6,
    );
  }).flat();
}

/** Specks and a few fibres lying on a plate of the given size, mm. */
export function randomDust(
  seed: number,
  specks: number,
  fibres: number,
  width: number,
  height: number,
): Stroke[] {
  const next = numbersFrom(seed);
  const place = (): readonly [number, number] => [(next() - 0.5) * width, (next() - 0.5) * height];
  const dust: Stroke[] = [];
  for (let i = 0; i < specks; i += 1) {
    const [x, y] = place();
    const size = 0.012 + 0.05 * next() ** 4;
    dust.push({
      x0: x,
      y0: y,
      x1: x + size * next(),
      y1: y + size * next(),
      width: size,
      strength: 0.9,
    });
  }
  for (let i = 0; i < fibres; i += 1) {
    const [x, y] = place();
    const angle = next() * Math.PI * 2;
    const long = 0.8 + 2.5 * next();
    const fibre = {
      x0: x,
      y0: y,
      x1: x + Math.cos(angle) * long,
      y1: y + Math.sin(angle) * long,
      width: 0.016 + 0.012 * next(),
      strength: 0.75,
    };
    dust.push(...bowedStroke(fibre, (next() - 0.5) * 0.9, 10));
  }
  return dust;
}
