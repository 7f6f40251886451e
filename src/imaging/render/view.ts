/**
 * Where the camera stands: the exact projective map from a flat plate to pixels, from its
 * distance, its scale and small errors of the stand.
 *
 * A pinhole with a flat plate gives a homography without remainder, so the truth between two
 * captures is a product of two matrices.
 */
import { type Homography } from '../conventions.ts';

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
  const placed: Matrix = multiply(
    [c, -s, 0, s, c, 0, 0, 0, 1],
    [1, 0, -view.shift[0], 0, 1, -view.shift[1], 0, 0, 1],
  );
  // What is tilted away from the lens is further from it: its share of the distance divides.
  const tilted: Matrix = [
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
  const toPixels: Matrix = [
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
  return normalise(multiply(layMatrix(view), multiply(toPixels, multiply(tilted, placed))));
}

type Matrix = Homography;

function layMatrix(view: View): Matrix {
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

/** The map that applies `second` after `first`. */
export function multiply(second: Homography, first: Homography): Homography {
  const out = Array.from({ length: 9 }, (_, i) => {
    const row = Math.floor(i / 3) * 3;
    const column = i % 3;
    return (
      second[row] * first[column] +
      second[row + 1] * first[column + 3] +
      second[row + 2] * first[column + 6]
    );
  });
  return out as unknown as Homography;
}

/** The same map with last element 1. */
export function normalise(m: Homography): Homography {
  return m.map((value) => value / m[8]) as unknown as Homography;
}

/** The map back. @throws RangeError for a map that squeezes the plane to a line. */
export function invert(m: Homography): Homography {
  const [a, b, c, d, e, f, g, h, i] = m;
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (determinant === 0) throw new RangeError('This homography has no inverse.');
  const adjugate: Homography = [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
  return normalise(adjugate);
}

/** Pixels of one view to pixels of another, by way of the plate. */
export function betweenViews(from: View, to: View): Homography {
  return normalise(multiply(viewHomography(to), invert(viewHomography(from))));
}
