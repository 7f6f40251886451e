/**
 * What the mirror shows to the lens: the area before the plate that is reflected into it. For a
 * positive reading that area must be dark, for a negative one evenly bright; nothing else matters.
 *
 * The lens is a disc of the aperture's diameter over the plate's centre, the plate a flat mirror
 * whose surface may lean by a small angle here and there (warp): a mirror turned by an angle
 * turns the ray by twice that angle.
 *
 * References
 * - Law of reflection and similar triangles: a plate of half-width e at a camera distance D sends
 *   to the lens what lies within atan(e/D); at a distance P before it, the width (D + P)/D times
 *   the plate's, and P/D times the aperture's for the rim of the lens.
 */

/** Lengths in mm, angles in degrees. */
export interface MirrorView {
  /** Of the plate, across or down. */
  readonly plateWidth: number;
  /** From the lens to the plate. */
  readonly cameraDistance: number;
  /** Diameter of the lens's opening as the plate sees it. */
  readonly openingDiameter: number;
  /** Largest lean of the surface against the plate's plane; 0 for a flat, level plate. */
  readonly warp: number;
}

/** Half-angle of the directions that reach the lens from one side of the plate's middle, degrees. */
export function mirrorHalfAngle(plateWidth: number, cameraDistance: number): number {
  return (Math.atan(plateWidth / 2 / cameraDistance) * 180) / Math.PI;
}

/** Turn of a reflected ray when the mirror turns, degrees. */
export function reflectedTurn(tilt: number): number {
  return 2 * tilt;
}

/**
 * Width that the plate shows of a plane parallel to it, mm.
 *
 * @param planeDistance From the plate to that plane along the path of light, mm.
 */
export function reflectedWidth(view: MirrorView, planeDistance: number): number {
  const { plateWidth, cameraDistance, openingDiameter, warp } = view;
  const ratio = planeDistance / cameraDistance;
  const edgeRay = Math.atan((plateWidth / 2 + openingDiameter / 2) / cameraDistance);
  const turned = edgeRay + (reflectedTurn(warp) * Math.PI) / 180;
  if (turned >= Math.PI / 2) return Infinity;
  const level = plateWidth * (1 + ratio) + openingDiameter * ratio;
  return level + 2 * planeDistance * (Math.tan(turned) - Math.tan(edgeRay));
}

/** The black mask around the lens for a positive reading, mm. */
export interface Mask {
  readonly width: number;
  readonly height: number;
  /** Diameter of the hole that the lens looks through: no larger than its front. */
  readonly hole: number;
  /** Diameter, on the plate, of the patch in which the hole itself is seen. */
  readonly holeOnPlate: number;
}

/**
 * A mask in the plane of the lens. The hole is the field of view where it passes the mask, which
 * there is the opening itself.
 */
export function darkMask(
  plate: readonly [width: number, height: number],
  view: Omit<MirrorView, 'plateWidth'>,
): Mask {
  const { cameraDistance, openingDiameter } = view;
  const side = (plateWidth: number) => reflectedWidth({ ...view, plateWidth }, cameraDistance);
  return {
    width: side(plate[0]),
    height: side(plate[1]),
    hole: openingDiameter,
    // At the lens's own distance the mirror shows everything at half of its size.
    holeOnPlate: openingDiameter / 2,
  };
}
