/**
 * Where the camera stands: the exact projective map from a flat plate to pixels, from its
 * distance, its scale and small errors of the stand.
 *
 * A pinhole with a flat plate gives a homography without remainder, so the truth between two
 * captures is a product of two matrices.
 */
import { multiply3 } from '../colour/matrix3.ts';
import { type Homography } from '../conventions.ts';
import { invert, normalise } from '../registration/homography.ts';

export interface View {
  /** Pixels of the capture. */
  readonly width: number;
  readonly height: number;
  /** At the plate's centre. */
  readonly pixelsPerMillimetre: number;
  /** From the lens to the plate, mm. */
  readonly distance: number;
  /** Where the optical axis meets the plate, mm from its centre, y down. */
  readonly shift: readonly [number, number];
  /** Rotation of the plate in the picture, degrees clockwise. */
  readonly turn: number;
  /** Tilt of the plate about the picture's horizontal and vertical axis, degrees. */
  readonly tilt: readonly [number, number];
  /** Picture turned by half a turn, or left for right, as a slip in handling makes it. */
  readonly lay?: 'as-is' | 'mirrored' | 'half-turned' | 'mirrored and half-turned';
}

/** Millimetres on the plate (from its centre, y down) to pixels of the view. */
export function viewHomography(view: View): Homography {
  const { distance, pixelsPerMillimetre } = view;
  const [aboutX, aboutY] = view.tilt.map(radians);
  const turn = radians(view.turn);
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const placed = multiply3(
    [c, -s, 0, s, c, 0, 0, 0, 1],
    [1, 0, -view.shift[0], 0, 1, -view.shift[1], 0, 0, 1],
  );
  // What is tilted away from the lens is further from it: its share of the distance divides.
  const tilted: Homography = [
    Math.cos(aboutY),
    0,
    0,
    Math.sin(aboutX) * Math.sin(aboutY),
    Math.cos(aboutX),
    0,
    -Math.sin(aboutY) / distance,
    (Math.sin(aboutX) * Math.cos(aboutY)) / distance,
    1,
  ];
  const toPixels: Homography = [
    pixelsPerMillimetre,
    0,
    (view.width - 1) / 2,
    0,
    pixelsPerMillimetre,
    (view.height - 1) / 2,
    0,
    0,
    1,
  ];
  return normalise(multiply3(layMatrix(view), multiply3(toPixels, multiply3(tilted, placed))));
}

function layMatrix(view: View): Homography {
  const lay = view.lay ?? 'as-is';
  const flipX = lay === 'mirrored' || lay === 'half-turned';
  const flipY = lay === 'half-turned' || lay === 'mirrored and half-turned';
  return [
    flipX ? -1 : 1,
    0,
    flipX ? view.width - 1 : 0,
    0,
    flipY ? -1 : 1,
    flipY ? view.height - 1 : 0,
    0,
    0,
    1,
  ];
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** Pixels of one view to pixels of another, by way of the plate. */
export function betweenViews(from: View, to: View): Homography {
  return normalise(multiply3(viewHomography(to), invert(viewHomography(from))));
}
