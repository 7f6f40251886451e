/** What a scene is: bodies, one source of light, a sky, and the camera of its maker. */
import { type Solid } from './solid.ts';

/** A lit rectangle (a window, a skylight) or the sun. Radiance in units in which white paper in full light gives about 1. */
export type Source =
  | {
      readonly kind: 'window';
      readonly centre: readonly [number, number, number];
      /** From the centre to the middle of two neighbouring sides; the lit face looks along `facing`. */
      readonly across: readonly [number, number, number];
      readonly up: readonly [number, number, number];
      readonly facing: readonly [number, number, number];
      readonly radiance: number;
    }
  | {
      readonly kind: 'sun';
      /** Unit vector towards it. */
      readonly towards: readonly [number, number, number];
      /** Half angle of the disc with its haze, radians. */
      readonly radius: number;
      /** Irradiance on a surface that faces it. */
      readonly irradiance: number;
    };

/** A camera with a rising front: the picture plane keeps its position in `rise`. */
export interface Camera {
  readonly position: readonly [number, number, number];
  readonly target: readonly [number, number, number];
  /** Tangent of half the vertical angle of view. */
  readonly tangent: number;
  /** Shift of the picture, in halves of its height; positive shows more of what is above. */
  readonly rise?: number;
  /** Distance at which the two pictures of a stereo pair agree, and that between the standpoints, metres. */
  readonly stereo?: { readonly base: number; readonly agree: number };
}

export interface Scene {
  readonly solids: readonly Solid[];
  readonly source: Source;
  /** Radiance of what no body covers, as light on the bodies. */
  readonly sky: (dx: number, dy: number, dz: number) => number;
  /** The same as the camera and mirrors see it, where that differs: a window that already counts as the source. */
  readonly seen?: (dx: number, dy: number, dz: number) => number;
  readonly camera: Camera;
  /** Radiance of light that has been scattered more than twice. */
  readonly ambient: number;
  /** Factor from radiance to exposure of the plate; the plate's response is in tone.ts. */
  readonly exposure: number;
  /** Distance at which haze has taken 63 % of the contrast, metres; Infinity for none. */
  readonly haze: number;
  /** Radiance of the haze. */
  readonly hazeRadiance: number;
  /** Blur of the lens in the corners, in thousandths of the picture's height. */
  readonly softness: number;
  /** Named parts for hand colouring: indices into `solids`. */
  readonly parts?: Readonly<Record<string, readonly number[]>>;
}

export type SceneMaker = (seed: number) => Scene;
