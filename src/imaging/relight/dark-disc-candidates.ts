/** Where dark discs on a lighter ground may lie in a picture, best first: starts for `darkDisc`. */
import type { Circle } from './ball-highlight.ts';

const rays = 48;
/** Radii that are tried: from so many pixels to this share of the shorter side, by these steps. */
const smallest = 4;
const largest = 0.5;
const growth = 1.12;
/** Candidates that are kept. */
const most = 8;
/** Mean contrast of the outline, from which a place is a candidate. Own choice. */
const least = 0.3;

/** @param luminance Linear, row-major with `width` columns; a small picture, 160 pixels or so. */
export function darkDiscCandidates(luminance: ArrayLike<number>, width: number): Circle[] {
  const height = luminance.length / width;
  const cosines = Array.from({ length: rays }, (_, k) => Math.cos((2 * Math.PI * k) / rays));
  const found: (Circle & { score: number })[] = [];
  const largestRadius = largest * Math.min(width, height);
  for (let radius = smallest; radius <= largestRadius; radius *= growth) {
    const step = Math.max(1, radius / 8);
    const [inner, outer] = [0.85 * radius - 0.5, 1.15 * radius + 0.5];
    for (let y = 0.75 * radius; y <= height - 0.75 * radius; y += step) {
      for (let x = 0.75 * radius; x <= width - 0.75 * radius; x += step) {
        let sum = 0;
        for (let k = 0; k < rays; k += 1) {
          const c = cosines[k];
          const s = cosines[(k + rays / 4) % rays];
          const [ox, oy] = [Math.round(x + outer * c), Math.round(y + outer * s)];
          if (ox < 0 || oy < 0 || ox >= width || oy >= height) continue;
          const outside = luminance[oy * width + ox];
          const inside = luminance[Math.round(y + inner * s) * width + Math.round(x + inner * c)];
          const contrast = (outside - inside) / (outside + inside + 0.002);
          sum += Math.max(-1, contrast);
        }
        if (sum > least * rays) found.push({ x, y, radius, score: sum });
      }
    }
  }
  found.sort((a, b) => b.score - a.score);
  const kept: (Circle & { score: number })[] = [];
  for (const one of found) {
    if (kept.length >= most) break;
    const near = kept.some(
      (k) =>
        Math.hypot(k.x - one.x, k.y - one.y) < 0.5 * Math.max(k.radius, one.radius) &&
        Math.abs(Math.log(k.radius / one.radius)) < 0.4,
    );
    if (!near) kept.push(one);
  }
  return kept.map(({ x, y, radius }) => ({ x, y, radius }));
}
