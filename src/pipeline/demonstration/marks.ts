/** Marks that the plates' records speak of, drawn as a hand or an accident draws them. */
import { numbersFrom } from '../../imaging/render/seeded.ts';
import { bowedStroke, type Stroke } from '../../imaging/render/strokes.ts';

type Point = readonly [x: number, y: number];

/** One scratch from point to point, mm from the plate's centre, y down. */
export function scratch(from: Point, to: Point, width: number, bow = 0.04): Stroke[] {
  const stroke = { x0: from[0], y0: from[1], x1: to[0], y1: to[1], width, strength: 0.95 };
  return bowedStroke(stroke, bow, 14);
}

/** Many fine scratches side by side along an arc, as a cloth leaves them. */
export function wipe(
  centre: Point,
  radius: number,
  angles: Point,
  wide: number,
  seed: number,
): Stroke[] {
  const next = numbersFrom(seed);
  const point = (r: number, degrees: number): Point => {
    const a = (degrees * Math.PI) / 180;
    return [centre[0] + r * Math.cos(a), centre[1] + r * Math.sin(a)];
  };
  return Array.from({ length: 90 }, () => {
    const r = radius + (next() - 0.5) * wide;
    const start = angles[0] + (next() - 0.5) * 12;
    const end = angles[1] + (next() - 0.5) * 12;
    const pieces = 8;
    const width = 0.006 + 0.01 * next();
    const strength = 0.15 + 0.45 * next();
    return Array.from({ length: pieces }, (_, i) => {
      const [x0, y0] = point(r, start + ((end - start) * i) / pieces);
      const [x1, y1] = point(r, start + ((end - start) * (i + 1)) / pieces);
      return { x0, y0, x1, y1, width, strength };
    });
  }).flat();
}

/** Short scratches all one way in a rectangle (left, top, width, height): abrasion, a scrape of the mat. */
export function abrasion(
  area: readonly [number, number, number, number],
  count: number,
  degrees: number,
  seed: number,
): Stroke[] {
  const next = numbersFrom(seed);
  const [left, top, width, height] = area;
  return Array.from({ length: count }, () => {
    const a = ((degrees + (next() - 0.5) * 14) * Math.PI) / 180;
    const long = 0.4 + 2.4 * next() ** 2;
    const x = left + next() * width;
    const y = top + next() * height;
    return {
      x0: x,
      y0: y,
      x1: x + Math.cos(a) * long,
      y1: y + Math.sin(a) * long,
      width: 0.006 + 0.012 * next(),
      strength: 0.2 + 0.5 * next(),
    };
  });
}

/** The ridges of a finger, 0.45 mm apart, interrupted as prints are. */
export function fingerprint(centre: Point, seed: number): Stroke[] {
  const next = numbersFrom(seed);
  const strokes: Stroke[] = [];
  for (let ring = 1; ring <= 7; ring += 1) {
    const rx = 0.42 * ring;
    const ry = 0.55 * ring;
    const pieces = 10 + 5 * ring;
    for (let i = 0; i < pieces; i += 1) {
      if (next() < 0.25) continue;
      const at = (j: number): Point => {
        const a = (2 * Math.PI * j) / pieces;
        return [centre[0] + rx * Math.cos(a), centre[1] + ry * Math.sin(a) + 0.06 * rx * rx];
      };
      const [x0, y0] = at(i);
      const [x1, y1] = at(i + 1);
      strokes.push({ x0, y0, x1, y1, width: 0.13, strength: 0.03 + 0.08 * next() });
    }
  }
  return strokes;
}
