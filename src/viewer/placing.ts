/**
 * Where the plate lies on the screen. Three sets of coordinates meet here:
 * plate pixels by their edges (x = 0 is the left edge of the first pixel), the deep zoom
 * library's viewport units (the plate is 1 wide), and CSS pixels of the picture's box.
 */
import type { Region } from './view-state.ts';

export interface Placing {
  /** Screen position of the plate's edge x = 0, CSS pixels. */
  readonly x: number;
  /** Screen position of the plate's edge y = 0, CSS pixels. */
  readonly y: number;
  /** CSS pixels per plate pixel. */
  readonly scale: number;
  /** Turned left for right: plate x runs to the left. */
  readonly mirrored: boolean;
}

export interface Box {
  readonly width: number;
  readonly height: number;
}

/**
 * @param bounds What is in sight, viewport units (the plate is 1 wide).
 * @param box Size of the picture's box, CSS pixels.
 */
export function placingOf(
  bounds: Region,
  box: Box,
  frameWidth: number,
  mirrored: boolean,
): Placing {
  const perUnit = box.width / bounds.width;
  const left = -bounds.x * perUnit;
  return {
    x: mirrored ? box.width - left : left,
    y: -bounds.y * perUnit,
    scale: perUnit / frameWidth,
    mirrored,
  };
}

/** Plate pixels to CSS pixels. */
export function toScreen(p: Placing, x: number, y: number): readonly [x: number, y: number] {
  return [p.x + (p.mirrored ? -x : x) * p.scale, p.y + y * p.scale];
}

/** CSS pixels to plate pixels. */
export function toPlate(p: Placing, x: number, y: number): readonly [x: number, y: number] {
  return [(p.mirrored ? p.x - x : x - p.x) / p.scale, (y - p.y) / p.scale];
}

/** A region of the plate as a rectangle on the screen. */
export function regionOnScreen(p: Placing, region: Region): Region {
  const [ax, ay] = toScreen(p, region.x, region.y);
  const [bx] = toScreen(p, region.x + region.width, region.y);
  return {
    x: Math.min(ax, bx),
    y: ay,
    width: region.width * p.scale,
    height: region.height * p.scale,
  };
}

/** A rectangle between two screen points as a region of the plate. */
export function regionBetween(
  p: Placing,
  from: readonly [number, number],
  to: readonly [number, number],
): Region {
  const [ax, ay] = toPlate(p, ...from);
  const [bx, by] = toPlate(p, ...to);
  return {
    x: Math.min(ax, bx),
    y: Math.min(ay, by),
    width: Math.abs(bx - ax),
    height: Math.abs(by - ay),
  };
}

/** Plate pixels to viewport units. */
export function toViewport(region: Region, frameWidth: number): Region {
  return {
    x: region.x / frameWidth,
    y: region.y / frameWidth,
    width: region.width / frameWidth,
    height: region.height / frameWidth,
  };
}

/** Viewport units to plate pixels. */
export function fromViewport(bounds: Region, frameWidth: number): Region {
  return {
    x: bounds.x * frameWidth,
    y: bounds.y * frameWidth,
    width: bounds.width * frameWidth,
    height: bounds.height * frameWidth,
  };
}

/**
 * A region whose shape is that of the box but for the rounding to whole pixels, given exactly
 * that shape again: its longer side is the better known one. Any other region is left as it is.
 */
export function shapedAs(region: Region, aspect: number): Region {
  const wide = aspect >= 1;
  const width = wide ? region.width : region.height * aspect;
  const height = wide ? region.width / aspect : region.height;
  if (Math.abs(width - region.width) > 1.5 || Math.abs(height - region.height) > 1.5) return region;
  return {
    x: region.x + (region.width - width) / 2,
    y: region.y + (region.height - height) / 2,
    width,
    height,
  };
}
