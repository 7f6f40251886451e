/**
 * An even, extended source over the plate: how large it must be to fill the mirror, how evenly
 * it lights the particles, and how much of its own unevenness the mirror shows.
 *
 * References
 * - Configuration factor from a small plane element to a parallel rectangle whose corner lies
 *   over it: Howell, J. R. A Catalog of Radiation Heat Transfer Configuration Factors, B-4 (the
 *   number is from memory); checked against numerical integration in
 *   `scripts/reference/panel-form-factor.py`.
 * - A source of even luminance is seen in a mirror with that luminance, wherever it is.
 */
import { reflectedWidth, type MirrorView } from './mirror-view.ts';

/** Share of the light that leaves a plane element for a rectangle a by b at distance c, over one corner. */
export function cornerFactor(a: number, b: number, c: number): number {
  const [u, v] = [a / c, b / c];
  const su = Math.sqrt(1 + u * u);
  const sv = Math.sqrt(1 + v * v);
  return ((u / su) * Math.atan(v / su) + (v / sv) * Math.atan(u / sv)) / (2 * Math.PI);
}

export interface Panel {
  /** Of the lit face, mm. */
  readonly width: number;
  readonly height: number;
  /** From the plate along the path of light, mm. */
  readonly distance: number;
}

/**
 * Irradiance at a place of the plate, as a share of what a sky of the panel's luminance would
 * give. Place in mm from the plate's centre, which lies below the panel's.
 */
export function panelFactor({ width, height, distance }: Panel, x: number, y: number): number {
  // Four corners with their signs: the formula is odd in each side, so a place outside works too.
  const [left, right] = [width / 2 + x, width / 2 - x];
  const [above, below] = [height / 2 + y, height / 2 - y];
  return (
    cornerFactor(left, above, distance) +
    cornerFactor(right, above, distance) +
    cornerFactor(left, below, distance) +
    cornerFactor(right, below, distance)
  );
}

/** Darkest over brightest place of the plate in the light of an even panel, 0 to 1. */
export function panelEvenness(
  panel: Panel,
  plate: readonly [width: number, height: number],
): number {
  return panelFactor(panel, plate[0] / 2, plate[1] / 2) / panelFactor(panel, 0, 0);
}

/** What to add to each side, since the edge of any panel fades: our own choice. */
const margin = 1.1;

/** Smallest panel that fills the mirror at a distance, mm, with a tenth to spare. */
export function panelToFill(
  plate: readonly [width: number, height: number],
  view: Omit<MirrorView, 'plateWidth'>,
  distance: number,
): Panel {
  const side = (plateWidth: number) => margin * reflectedWidth({ ...view, plateWidth }, distance);
  return { width: side(plate[0]), height: side(plate[1]), distance };
}

/**
 * Unevenness that the mirror shows across the plate, relative, when the panel's luminance
 * changes steadily from one side to the other by `panelSlope`: the plate shows a part of it only.
 */
export function seenUnevenness(
  panelWidth: number,
  panelSlope: number,
  view: MirrorView,
  distance: number,
): number {
  const seen = reflectedWidth({ ...view, openingDiameter: 0, warp: 0 }, distance);
  return (panelSlope * Math.min(seen, panelWidth)) / panelWidth;
}
