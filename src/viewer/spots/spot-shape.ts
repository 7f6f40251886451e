/** Rectangles and outlines of spots, plate pixels. */
import type { Region } from '../view-state.ts';

export type Point = readonly [x: number, y: number];

export function rectangleBetween([ax, ay]: Point, [bx, by]: Point): Region {
  return {
    x: Math.min(ax, bx),
    y: Math.min(ay, by),
    width: Math.abs(bx - ax),
    height: Math.abs(by - ay),
  };
}

/** The smallest rectangle around an outline. */
export function outlineRegion(points: readonly Point[]): Region {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return rectangleBetween([Math.min(...xs), Math.min(...ys)], [Math.max(...xs), Math.max(...ys)]);
}

/** An outline as a W3C SvgSelector holds it. */
export function outlineSvg(points: readonly Point[]): string {
  const list = points.map(([x, y]) => `${Math.round(x)},${Math.round(y)}`).join(' ');
  return `<svg xmlns="http://www.w3.org/2000/svg"><polygon points="${list}"/></svg>`;
}

/** The outline of an SvgSelector with one polygon; null for anything else. */
export function outlineFrom(svg: string): Point[] | null {
  if (svg.length > 30_000) return null;
  // The element first and then its attribute: in one expression a text of nothing but beginnings
  // of polygons took a third of a second.
  const attributes = /<polygon(\s[^<>]*)/.exec(svg)?.[1] ?? '';
  const list = /\spoints="([-\d.,\s]{5,20000})"/.exec(attributes)?.[1];
  const numbers =
    list
      ?.trim()
      .split(/[\s,]+/)
      .map(Number) ?? [];
  if (numbers.length < 6 || numbers.length % 2 !== 0 || !numbers.every(Number.isFinite))
    return null;
  return Array.from({ length: numbers.length / 2 }, (_, i) => [numbers[2 * i], numbers[2 * i + 1]]);
}
