/**
 * A picture that shows nothing but has what pictures have: broad tones, edges at all angles,
 * round things, fine texture. For tests that must not depend on the demonstration's scenes.
 */
import { type Plane } from '../plane.ts';
import { cloudyNoise } from './noise.ts';
import { numbersFrom } from './seeded.ts';

interface Shape {
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly cos: number;
  readonly sin: number;
  readonly tall: number;
  readonly tone: number;
  readonly round: boolean;
}

/** Linear luminance, 0 to 1. */
export function standInScene(seed: number, width: number, height: number): Plane {
  const next = numbersFrom(seed);
  const shapes: Shape[] = Array.from({ length: 26 }, () => {
    const angle = next() * Math.PI;
    return {
      x: next() * width,
      y: next() * height,
      size: (0.02 + 0.12 * next() ** 2) * width,
      cos: Math.cos(angle),
      sin: Math.sin(angle),
      tall: 0.4 + next(),
      tone: 0.04 + 0.9 * next() ** 1.5,
      round: next() < 0.5,
    };
  });
  const data = new Float32Array(width * height);
  const unit = 6 / width;
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      let tone = 0.22 + 0.2 * (1 - y / height);
      for (const shape of shapes) tone = covered(shape, x, y, tone);
      const cloth = cloudyNoise(x * unit * 4, y * unit * 4, seed + 11, 6);
      data[y * width + x] = Math.min(1, Math.max(0, tone * (1 + 0.35 * cloth)));
    }
  }
  return { width, height, data };
}

function covered(shape: Shape, x: number, y: number, below: number): number {
  const dx = x - shape.x;
  const dy = y - shape.y;
  const u = (dx * shape.cos + dy * shape.sin) / shape.size;
  const v = (dy * shape.cos - dx * shape.sin) / (shape.size * shape.tall);
  const depth = shape.round ? 1 - Math.hypot(u, v) : 1 - Math.max(Math.abs(u), Math.abs(v));
  const share = Math.min(1, Math.max(0, depth * shape.size * 0.7 + 0.5));
  if (share === 0) return below;
  // Lit from the upper left, as a body would be.
  const lit = shape.round ? 0.55 + 0.45 * Math.max(-1, Math.min(1, -0.7 * u - 0.7 * v)) : 0.8;
  return below + (shape.tone * lit - below) * share;
}
