/**
 * An area and an angle on the plate with their standard uncertainties.
 *
 * References
 * - Area of a polygon from its corners: Gauss's formula; Braden, B. (1986). The surveyor's area
 *   formula. The College Mathematics Journal 17(4), 326-337. doi:10.2307/2686282
 * - JCGM 100:2008 (GUM), 5.1.2: uncertainties through first derivatives, added in squares.
 */
import { measures, words } from '../words.ts';

export type Point = readonly [x: number, y: number];

export interface MeasuredArea {
  readonly squareMillimetres: number;
  /** Standard uncertainty; null when that of the scale is not known. */
  readonly uncertainty: number | null;
}

/** Area of a polygon in square units of its corners; the order of the corners does not matter. */
export function polygonArea(corners: readonly Point[]): number {
  let twice = 0;
  corners.forEach(([x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length];
    twice += x * nextY - nextX * y;
  });
  return Math.abs(twice) / 2;
}

/**
 * @param corners Plate pixels. @param pointing Standard uncertainty of each coordinate, pixels.
 * @param perMillimetre Pixels per mm. @param scaleUncertainty Its standard uncertainty, or null.
 */
export function measuredArea(
  corners: readonly Point[],
  pointing: number,
  perMillimetre: number,
  scaleUncertainty: number | null,
): MeasuredArea {
  const pixels = polygonArea(corners);
  const squareMillimetres = pixels / perMillimetre ** 2;
  if (scaleUncertainty === null) return { squareMillimetres, uncertainty: null };
  // A corner's derivative of the area is half the line between its neighbours, turned.
  const chords = corners.map((_, i) => {
    const [bx, by] = corners[(i + corners.length - 1) % corners.length];
    const [ax, ay] = corners[(i + 1) % corners.length];
    return (ax - bx) ** 2 + (ay - by) ** 2;
  });
  const fromPointing = (pointing / 2) * Math.sqrt(chords.reduce((sum, c) => sum + c, 0));
  const fromScale = (2 * squareMillimetres * scaleUncertainty) / perMillimetre;
  return {
    squareMillimetres,
    uncertainty: Math.hypot(fromPointing / perMillimetre ** 2, fromScale),
  };
}

/**
 * The angle at `corner` between the directions to both ends, degrees 0 to 180. The scale does
 * not enter.
 *
 * @param pointing Standard uncertainty of each coordinate, pixels.
 */
export function measuredAngle(
  first: Point,
  corner: Point,
  second: Point,
  pointing: number,
): { readonly degrees: number; readonly uncertainty: number } {
  const [ax, ay] = [first[0] - corner[0], first[1] - corner[1]];
  const [bx, by] = [second[0] - corner[0], second[1] - corner[1]];
  const [a, b, c] = [Math.hypot(ax, ay), Math.hypot(bx, by), Math.hypot(ax - bx, ay - by)];
  const radians = Math.atan2(Math.abs(ax * by - ay * bx), ax * bx + ay * by);
  const slope = Math.hypot(1 / a, 1 / b, c / (a * b));
  return {
    degrees: (radians * 180) / Math.PI,
    uncertainty: (pointing * slope * 180) / Math.PI,
  };
}

function digitsFor(uncertainty: number): number {
  return Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(uncertainty))));
}

/** "12.34 mm² ± 0.06 mm²" */
export function areaWords({ squareMillimetres, uncertainty }: MeasuredArea): string {
  if (uncertainty === null || !(uncertainty > 0))
    return words.measure.uncertain(`${measures.figure(squareMillimetres)}\u202fmm²`);
  const digits = digitsFor(uncertainty);
  const area = (value: number) => `${measures.fixed(value, digits)}\u202fmm²`;
  return words.measure.standard(area(squareMillimetres), area(uncertainty));
}

/** "43.1° ± 0.4°" */
export function angleWords(angle: ReturnType<typeof measuredAngle>): string {
  const digits = digitsFor(Math.max(angle.uncertainty, 0.001));
  const degrees = (value: number) => `${measures.fixed(value, digits)}°`;
  return words.measure.standard(degrees(angle.degrees), degrees(angle.uncertainty));
}
