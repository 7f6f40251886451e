/**
 * A plate as numbers: what the renderer knows about an object that does not exist.
 *
 * Lengths are millimetres on the plate as the camera sees it, from its centre, x right and
 * y **down**, as rows run. Directions of light keep the convention of `conventions.ts` (y up)
 * and are turned where they meet the plate.
 */
import { type Plane } from '../plane.ts';
import { type Stroke } from './strokes.ts';

/** What carries the picture. */
export type Support = 'silver' | 'glass';

/** The opening of the mat that lay on the plate, whose edge the tarnish follows. */
export interface Opening {
  readonly shape: 'oval' | 'rectangle' | 'octagon' | 'arch';
  /** mm */
  readonly width: number;
  readonly height: number;
  /** Centre, mm; for a plate with two pictures there are two openings. */
  readonly x: number;
  readonly y: number;
}

export interface Tarnish {
  readonly openings: readonly Opening[];
  /** Film at the edge of the opening, nm. */
  readonly rim: number;
  /** Distance over which the film thins to a third, mm. */
  readonly reach: number;
  /** Film everywhere inside, nm. */
  readonly haze: number;
  /** Film that has come in from the plate's edges, nm at the edge. */
  readonly edge: number;
}

/** A place where the surface stands up or lies deep. */
export interface Dent {
  readonly x: number;
  readonly y: number;
  /** mm, to one standard deviation of its profile. */
  readonly radius: number;
  /** mm; below 0 it lies deep. */
  readonly depth: number;
}

/** A round patch of film: corrosion, a brown dot, a drop. */
export interface FilmSpot {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Film at the rim of the spot and at its centre, nm. */
  readonly rim: number;
  readonly centre: number;
}

/** Pigment laid on by hand: a mask in the frame of the plate's first picture. */
export interface Tint {
  /** Where the brush went, 0 to 1. */
  readonly mask: Plane;
  /** Linear sRGB albedo of the pigment. */
  readonly colour: readonly [number, number, number];
  /** Share of the surface that it covers where it lies thickest, 0 to 1. */
  readonly strength: number;
}

/** One picture on the plate: a plane of linear luminance, 0 to 1, and where it lies. */
export interface Picture {
  readonly scene: Plane;
  /** Left and top edge, width and height, mm. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Plate {
  readonly seed: number;
  readonly support: Support;
  /** mm as the camera sees it. */
  readonly width: number;
  readonly height: number;
  readonly pictures: readonly Picture[];
  /** True where the picture lies left for right, as on most plates. */
  readonly laterallyReversed: boolean;
  /** Share of the surface that particles cover in the brightest highlight, 0 to 1. */
  readonly density: number;
  /** Share of the mirror's light that the polishing lines spread, 0 to 1. */
  readonly polish: number;
  /** Standard deviation of the surface's slow undulation, degrees. */
  readonly undulation: number;
  readonly tarnish: Tarnish;
  readonly scratches: readonly Stroke[];
  readonly dust: readonly Stroke[];
  readonly dents: readonly Dent[];
  readonly filmSpots: readonly FilmSpot[];
  readonly tints: readonly Tint[];
}
