/**
 * The shift of one window to a few hundredths of a pixel, by robust Gauss-Newton on its field.
 *
 * References: Baker and Matthews (2004), as in gauss-newton-step.ts.
 */
import type { GradientField } from './gradient-field.ts';
import { linearAt } from './warp-plane.ts';

export interface WindowShift {
  /** Displacement of the drawn window against the base, pixels. */
  readonly dx: number;
  readonly dy: number;
  /** Normalised correlation of the two fields at that displacement, -1 to 1. */
  readonly likeness: number;
}

/** Samples left out at the window's edge, whose smoothing lacks neighbours. */
const edge = 8;
/** Square of the difference at which a sample has half its weight. */
const spread = 0.09;
const mostSteps = 8;
/** Farther than this, pixels, and the start was too far off. */
const farthest = 5;
/** Less of the window usable, as a share, and nothing is said. */
const leastUsable = 0.3;
/** Less likeness, and the shift is an accident. */
const leastLikeness = 0.25;

export function windowShift(still: GradientField, drawn: GradientField): WindowShift | null {
  let dx = 0;
  let dy = 0;
  let likeness = 0;
  for (let k = 0; k < mostSteps; k += 1) {
    const s = windowSums(still, drawn, dx, dy);
    const area = (still.width - 2 * edge) * (still.height - 2 * edge);
    if (s.count < area * leastUsable) return null;
    const determinant = s.gxx * s.gyy - s.gxy * s.gxy;
    if (!(determinant > 1e-12)) return null;
    const ux = (s.gyy * s.rx - s.gxy * s.ry) / determinant;
    const uy = (s.gxx * s.ry - s.gxy * s.rx) / determinant;
    dx += Math.max(-1, Math.min(1, ux));
    dy += Math.max(-1, Math.min(1, uy));
    likeness = s.product / Math.sqrt(s.stillPower * s.drawnPower + 1e-12);
    if (Math.hypot(dx, dy) > farthest) return null;
    if (Math.hypot(ux, uy) < 0.003) break;
  }
  return likeness >= leastLikeness ? { dx, dy, likeness } : null;
}

function windowSums(still: GradientField, drawn: GradientField, dx: number, dy: number) {
  const { width: w, height: h, re: fr, im: fi } = still;
  const s = { gxx: 0, gxy: 0, gyy: 0, rx: 0, ry: 0, product: 0, count: 0 };
  let stillPower = 0;
  let drawnPower = 0;
  const ix = Math.floor(dx);
  const iy = Math.floor(dy);
  const fx = dx - ix;
  const fy = dy - iy;
  for (let y = edge; y < h - edge; y += 1) {
    for (let x = edge, i = y * w + edge; x < w - edge; x += 1, i += 1) {
      const j = i + iy * w + ix;
      if (!still.usable[i] || !drawn.usable[j]) continue;
      const mr = linearAt(drawn.re, w, j, fx, fy);
      const mi = linearAt(drawn.im, w, j, fx, fy);
      const dr = fr[i] - mr;
      const di = fi[i] - mi;
      const ax = 0.5 * (fr[i + 1] - fr[i - 1]);
      const ay = 0.5 * (fr[i + w] - fr[i - w]);
      const bx = 0.5 * (fi[i + 1] - fi[i - 1]);
      const by = 0.5 * (fi[i + w] - fi[i - w]);
      const weight = 1 / (1 + (dr * dr + di * di) / spread);
      s.gxx += weight * (ax * ax + bx * bx);
      s.gxy += weight * (ax * ay + bx * by);
      s.gyy += weight * (ay * ay + by * by);
      s.rx += weight * (ax * dr + bx * di);
      s.ry += weight * (ay * dr + by * di);
      s.product += fr[i] * mr + fi[i] * mi;
      stillPower += fr[i] * fr[i] + fi[i] * fi[i];
      drawnPower += mr * mr + mi * mi;
      s.count += 1;
    }
  }
  return { ...s, stillPower, drawnPower };
}
